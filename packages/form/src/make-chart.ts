import { type Metre, readMetre } from '@reedplate/line';
import {
  type Chord,
  chordOfNumeral,
  type Key,
  parseKey,
  ReedplateError,
  requireInteger,
  requireOneOf,
} from '@reedplate/pitch';
import { type Chart, type ChordSpan, FEELS, type Feel, type Form, type FormBar } from './types.js';

/** What {@link makeChart} needs besides the form. */
export interface ChartOptions {
  /** Key of the song. A tonic alone takes the mode of the form: `A` with a minor form is A minor. */
  readonly key: Key | string;
  /** Default the metre of the form. */
  readonly metre?: Metre;
  /** Default the feel of the form. */
  readonly feel?: Feel;
  /** Felt beats a minute, above 0 and at most 1000; default none. */
  readonly tempo?: number;
  /** Times through the form, 1 to 1000; default 1. */
  readonly choruses?: number;
  /** Ticks before bar 1, from 0 and less than a bar; default 0. */
  readonly pickup?: number;
}

const MOST_CHORUSES = 1000;
const FASTEST_TEMPO = 1000;

/**
 * Realises a form in a key: its chords on the beat grid, bar after bar without gap, spelled for
 * the key. Chords share a bar by their weights; a share that is no whole number of ticks is
 * rounded to the nearest.
 *
 * @throws ReedplateError `KEY_UNKNOWN`, `METRE_UNKNOWN`, `NUMBER_RANGE`, `OPTION_UNKNOWN`; also
 * `OPTION_UNKNOWN` for a minor key given to a major form
 * @example
 * ```ts
 * import { formById, makeChart } from '@reedplate/form';
 *
 * const chart = makeChart(formById('basic'), { key: 'Ab' });
 * chart.spans[4]?.chord?.symbol; // => 'Db7'
 * chart.spans[4]?.start; // => 15360
 * makeChart(formById('basic'), { key: 'H' }); // throws KEY_UNKNOWN
 * ```
 */
export function makeChart(form: Form, options: ChartOptions): Chart {
  const { metre = form.metre, feel = form.feel, tempo, choruses = 1, pickup = 0 } = options;
  const key = keyFor(form, options.key);
  const { barTicks } = readMetre(metre);
  requireInteger(choruses, { min: 1, max: MOST_CHORUSES, what: 'choruses' });
  requireInteger(pickup, { min: 0, max: barTicks - 1, what: 'ticks of pickup' });
  const spans = layBars(repeatBars(form.bars, choruses), { metre, pickup, key });
  return Object.freeze({
    form: form.id,
    key: key.name,
    metre,
    feel: requireOneOf(feel, FEELS, { what: 'a feel' }),
    ...(tempo === undefined ? {} : { tempo: requireTempo(tempo) }),
    choruses,
    pickup,
    bars: form.bars.length * choruses,
    spans: Object.freeze(spans),
  });
}

function keyFor({ mode, id }: Form, given: Key | string): Key {
  const key = typeof given === 'string' ? parseKey(given) : given;
  if (key.mode === mode) return key;
  if (mode === 'minor') return parseKey(`${key.tonic}m`);
  throw new ReedplateError({
    code: 'OPTION_UNKNOWN',
    value: key.name,
    expected: `a major key for the form ${id}; toMinor makes a minor form of it`,
    nearest: key.tonic,
  });
}

function requireTempo(tempo: unknown): number {
  if (typeof tempo === 'number' && tempo > 0 && tempo <= FASTEST_TEMPO) return tempo;
  throw new ReedplateError({
    code: 'NUMBER_RANGE',
    value: tempo,
    expected: 'felt beats a minute, above 0 and at most 1000',
  });
}

/** A bar of a chart before it has chords in a key. */
interface PlannedBar {
  readonly chords: FormBar;
  readonly chorus: number;
  readonly barOfForm: number;
}

function repeatBars(bars: readonly FormBar[], choruses: number): readonly PlannedBar[] {
  return Array.from({ length: choruses }, (_, index) =>
    bars.map((chords, at) => ({ chords, chorus: index + 1, barOfForm: at + 1 })),
  ).flat();
}

interface Grid {
  readonly metre: Metre;
  readonly pickup: number;
  readonly key: Key;
}

function layBars(bars: readonly PlannedBar[], { metre, pickup, key }: Grid): ChordSpan[] {
  const { barTicks, beatTicks } = readMetre(metre);
  const chordOf = chordReader(key);
  return bars.flatMap(({ chords, chorus, barOfForm }, index) => {
    const barStart = pickup + index * barTicks;
    const edges = sharesOf(chords, barTicks);
    return chords.map(({ numeral }, at): ChordSpan => {
      const [from = 0, to = barTicks] = edges.slice(at, at + 2);
      return Object.freeze({
        start: barStart + from,
        end: barStart + to,
        chorus,
        bar: index + 1,
        barOfForm,
        beat: from / beatTicks + 1,
        numeral,
        chord: numeral === null ? null : chordOf(numeral),
      });
    });
  });
}

/** Ticks within the bar at which each chord begins, and the end of the bar. */
function sharesOf(chords: FormBar, barTicks: number): readonly number[] {
  const total = chords.reduce((sum, { weight }) => sum + weight, 0);
  const edges = [0];
  let before = 0;
  for (const { weight } of chords) {
    before += weight;
    edges.push(Math.round((barTicks * before) / total));
  }
  return edges;
}

/** Spells each numeral of the form once for the key. */
function chordReader(key: Key): (numeral: string) => Chord {
  const known = new Map<string, Chord>();
  return (numeral) => {
    const chord = known.get(numeral) ?? chordOfNumeral(numeral, key);
    known.set(numeral, chord);
    return chord;
  };
}
