import type { Chart, ChordSpan, Feel } from '@reedplate/form';
import { type Metre, type MetreParts, parseMetre } from '@reedplate/line';
import {
  type Chord,
  isReedplateError,
  type KeyName,
  numeralOfChord,
  parseChord,
} from '@reedplate/pitch';
import type { WarningList } from '../warning.js';
import type { ChordMark } from './lay-measures.js';

/** Where the chords of a chart stand. */
export interface ChartFrame {
  /** Id of the chart, in the place of a form's. */
  readonly form: string;
  readonly key: KeyName;
  readonly metre: Metre;
  readonly pickup: number;
  readonly tempo?: number;
  /** Default straight. */
  readonly feel?: Feel;
  /** First tick after the last note or chord. */
  readonly end: number;
}

/**
 * The chart of chord symbols in time: bar after bar, each chord held until the next, no chord
 * before the first. Of a pickup's chords only the last counts, from bar 1 on if none comes there;
 * `undefined` where no symbol can be read.
 */
export function chartOfMarks(
  marks: readonly ChordMark[],
  frame: ChartFrame,
  warnings: WarningList,
): Chart | undefined {
  const read = readMarks(marks, warnings);
  if (read.length === 0) return undefined;
  const metre = parseMetre(frame.metre);
  const bars = countBars((frame.end - frame.pickup) / metre.barTicks, read.length, warnings);
  const { form, key, pickup, tempo, feel = 'straight' } = frame;
  return Object.freeze({
    form,
    key,
    metre: frame.metre,
    feel,
    ...(tempo === undefined ? {} : { tempo }),
    choruses: 1,
    pickup,
    bars,
    spans: Object.freeze(spansOf(read, { ...frame, ...metre, bars })),
  });
}

/** Longest chart: hours of music. A file that asks for more is damaged. */
const MOST_BARS = 10_000;
/** Bars that a chart of one chord may have; a chord held for longer is damage too. */
const BARS_FOR_ALL = 1000;
const BARS_A_CHORD = 16;

function countBars(exact: number, chords: number, warnings: WarningList): number {
  const bars = Math.max(1, Math.ceil(exact));
  const most = Math.min(MOST_BARS, BARS_FOR_ALL + BARS_A_CHORD * chords);
  if (bars > most) warnings.add('data-malformed', {}, `${bars} bars`);
  return Math.min(bars, most);
}

interface ReadMark {
  readonly start: number;
  readonly chord: Chord | null;
}

function readMarks(marks: readonly ChordMark[], warnings: WarningList): readonly ReadMark[] {
  let lastStart = -1;
  return marks.flatMap(({ start, text }): readonly ReadMark[] => {
    const chord = readSymbol(text);
    const isSecond = start === lastStart;
    if (chord === undefined) warnings.add('chord-unknown', {}, text);
    else if (isSecond) warnings.add('chord-alternative', {}, text);
    if (chord === undefined || isSecond) return [];
    lastStart = start;
    return [{ start, chord }];
  });
}

const NO_CHORD = /^n\.? ?c\.?$/iu;
/** A bass note in lower case, `+` for a sharp: common in files, no source. */
const BASS = /\/([A-Ga-g])([#b♯♭+]?)$/u;

/** The chord of a symbol, null for no chord, `undefined` where it cannot be read. */
function readSymbol(text: string): Chord | null | undefined {
  const symbol = text.trim();
  if (NO_CHORD.test(symbol)) return null;
  try {
    return parseChord(
      symbol.replace(
        BASS,
        (_, letter: string, sign: string) => `/${letter.toUpperCase()}${sign.replace('+', '#')}`,
      ),
    );
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    return undefined;
  }
}

function spansOf(
  marks: readonly ReadMark[],
  frame: ChartFrame & Pick<MetreParts, 'barTicks' | 'beatTicks'> & { readonly bars: number },
): ChordSpan[] {
  const { key, pickup, bars, barTicks, beatTicks } = frame;
  const spans: ChordSpan[] = [];
  let chord: Chord | null = null;
  let next = 0;
  for (let bar = 1; bar <= bars; bar += 1) {
    const barStart = pickup + (bar - 1) * barTicks;
    const barEnd = barStart + barTicks;
    for (; (marks[next]?.start ?? barEnd) <= barStart; next += 1) {
      chord = marks[next]?.chord ?? null;
    }
    const changes: ReadMark[] = [{ start: barStart, chord }];
    for (; (marks[next]?.start ?? barEnd) < barEnd; next += 1)
      changes.push(marks[next] as ReadMark);
    for (const [at, { start, chord: sounding }] of changes.entries()) {
      const end = changes[at + 1]?.start ?? barEnd;
      const beat = (start - barStart) / beatTicks + 1;
      const place = { start, end, chorus: 1, bar, barOfForm: bar, beat };
      const numeral = sounding && numeralOfChord(sounding, key).text;
      spans.push(Object.freeze({ ...place, numeral, chord: sounding }));
    }
    chord = changes.at(-1)?.chord ?? null;
  }
  return spans;
}
