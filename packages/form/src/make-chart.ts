import { type Metre, parseMetre } from '@reedplate/line';
import {
  type Key,
  type KeyLike,
  type OptionNames,
  parseKey,
  ReedplateError,
  requireInteger,
  requireOptions,
  requirePositive,
  toKey,
} from '@reedplate/pitch';
import type { EndingId } from './endings.js';
import type { IntroKind } from './intro.js';
import { layBars } from './lay-bars.js';
import { type ChartBreak, planBars } from './plan-bars.js';
import { toFeel } from './to-feel.js';
import { type FormLike, type KnownForms, toForm } from './to-form.js';
import type { Chart, Feel, Form } from './types.js';

/** How {@link makeChart} lays a form out. */
export interface ChartOptions {
  /** Default the metre of the form. */
  readonly metre?: Metre;
  /** `slow` is read as `slow-12/8`; default the feel of the form. */
  readonly feel?: Feel | 'slow';
  /** Felt beats a minute, above 0 and at most 1000; default none. */
  readonly tempo?: number;
  /** Times through the form, 1 to 1000; default 1. */
  readonly choruses?: number;
  /** Ticks before bar 1, from 0 and less than a bar; default 0. */
  readonly pickup?: number;
  /** Bars before the first chorus: `five` from the V, `turnaround` the last two; default none. */
  readonly intro?: IntroKind;
  /** Last two bars of the last chorus, by their id; default as the form has them. */
  readonly ending?: EndingId;
  /** Bars in which the band is silent; default none. */
  readonly breaks?: readonly ChartBreak[];
  /** Forms of one's own that may be named by their id. */
  readonly known?: KnownForms;
}

const CHART_OPTIONS: OptionNames<ChartOptions> = {
  metre: true,
  feel: true,
  tempo: true,
  choruses: true,
  pickup: true,
  intro: true,
  ending: true,
  breaks: true,
  known: true,
};

const MOST_CHORUSES = 1000;
const FASTEST_TEMPO = 1000;

/**
 * Realises a form in a key: its chords on the beat grid, bar after bar without gap, spelled for
 * the key. Chords share a bar by their weights; a share that is no whole number of ticks is
 * rounded to the nearest.
 *
 * @param form a form, or the id of one
 * @param key key of the song; a tonic alone takes the mode of the form, so that `A` with a minor
 * form is A minor
 * @throws ReedplateError `FORM_UNKNOWN`, `KEY_UNKNOWN`, `METRE_UNKNOWN`, `NUMBER_RANGE`, `OPTION_UNKNOWN` (also
 * for a minor key given to a major form), `FORM_INVALID` for an introduction or an ending that
 * the form has no place for
 * @example
 * ```ts
 * import { makeChart } from '@reedplate/form';
 *
 * const chart = makeChart('basic', 'Ab', { choruses: 2, intro: 'from-the-five' });
 * chart.bars; // => 28
 * chart.spans[8]?.chord?.symbol; // => 'Db7'
 * chart.spans[8]?.start; // => 30720
 * makeChart('basic', 'Am'); // throws OPTION_UNKNOWN
 * ```
 */
export function makeChart(form: FormLike, key: KeyLike, options: ChartOptions = {}): Chart {
  const { known } = requireOptions(options, CHART_OPTIONS, 'makeChart');
  return layChart(toForm(form, known), key, options);
}

function layChart(form: Form, songKey: KeyLike, options: ChartOptions): Chart {
  const { metre = form.metre, feel = form.feel, tempo, choruses = 1, pickup = 0 } = options;
  const { intro, ending, breaks } = options;
  const key = keyFor(form, toKey(songKey));
  const { barTicks } = parseMetre(metre);
  requireInteger(choruses, { min: 1, max: MOST_CHORUSES, what: 'choruses' });
  requireInteger(pickup, { min: 0, max: barTicks - 1, what: 'ticks of pickup' });
  const planned = planBars(form, { choruses, metre, intro, ending, breaks });
  const barsOfIntro = planned.length - choruses * form.bars.length;
  return Object.freeze({
    form: form.id,
    key: key.name,
    metre,
    feel: toFeel(feel),
    ...(tempo === undefined ? {} : { tempo: requireTempo(tempo) }),
    choruses,
    ...(barsOfIntro === 0 ? {} : { intro: barsOfIntro }),
    pickup,
    bars: planned.length,
    spans: layBars(planned, { metre, pickup, key }),
  });
}

function keyFor({ mode, id }: Form, key: Key): Key {
  if (key.mode === mode) return key;
  if (mode === 'minor') return parseKey(`${key.tonic}m`);
  throw new ReedplateError({
    code: 'OPTION_UNKNOWN',
    value: key.name,
    expected: `a major key for the form ${id}; toMinor makes a minor form of it`,
    nearest: key.tonic,
  });
}

/** The tempo, if it is one. */
export function requireTempo(tempo: unknown): number {
  return requirePositive(tempo, { max: FASTEST_TEMPO, what: 'felt beats a minute' });
}
