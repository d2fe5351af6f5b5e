import {
  type Chart,
  chordAt,
  type Form,
  formatForm,
  makeChart,
  makeForm,
  parseForm,
} from '@reedplate/form';
import { parseMetre } from '@reedplate/line';
import {
  asErrorOf,
  type Chord,
  itemAt,
  type KeyLike,
  parseKey,
  requireShape,
  SCALE_DEGREES,
  type ScaleDegree,
  toPitchClass,
} from '@reedplate/pitch';
import type { Phrase } from './phrase.js';

/** Chords as text, read: the bars and the text in one line, repeats written out. */
interface ReadHarmony {
  readonly text: string;
  readonly bars: Form['bars'];
  readonly mode: Form['mode'];
}

/**
 * Harmonies that were read. Measured: with it the catalogue takes 0.4 to 0.6 s of processor time to read,
 * without it 0.9 s, most of it for a few dozen texts again and again.
 */
const READ = new Map<string, ReadHarmony>();
const MOST_READ = 200;

function readHarmony(text: unknown): ReadHarmony {
  const known = READ.get(text as string);
  if (known !== undefined) return known;
  const read = asErrorOf('PHRASE_INVALID', { path: 'harmony' }, () => {
    const { bars, mode } = parseForm(text as string);
    // Each bar by itself, so that a bar like the one before it is written out.
    const written = bars.map((bar) =>
      formatForm(makeForm([bar]))
        .slice(2, -2)
        .trim(),
    );
    return { text: `| ${written.join(' | ')} |`, bars, mode };
  });
  if (READ.size >= MOST_READ) READ.clear();
  READ.set(text as string, read);
  return read;
}

/** The bars of chords as they are written in one line, repeats written out. */
export function plainHarmony(text: unknown): string {
  return readHarmony(text).text;
}

/** The mode of a song with these chords. */
export function modeOfHarmony(harmony: string): Form['mode'] {
  return readHarmony(harmony).mode;
}

/** How many bars the chords of a phrase take. */
export function barsOf({ harmony }: Pick<Phrase, 'harmony'>): number {
  return readHarmony(harmony).bars.length;
}

const PHRASE = { what: 'a phrase, as makePhrase gives it', code: 'PHRASE_INVALID' } as const;

/** What says which chords sound under a phrase, and when. */
export type PhraseTime = Pick<Phrase, 'harmony' | 'metre' | 'feel' | 'pickup'>;

/**
 * The chords that a phrase is made for, as a chart in a key: what the phrase can be played over, and
 * scored against. A tonic alone takes the mode of the phrase.
 *
 * @throws ReedplateError `KEY_UNKNOWN`; `OPTION_UNKNOWN` for a minor key given to a phrase in major
 * @example
 * ```ts
 * import { phraseById, phraseChart } from '@reedplate/practice';
 *
 * phraseChart(phraseById('low-seat'), 'G').spans[0]?.chord?.symbol; // => 'G7'
 * phraseChart(phraseById('low-seat'), 'H' as 'G'); // throws KEY_UNKNOWN
 * ```
 */
export function phraseChart(phrase: PhraseTime, key: KeyLike): Chart {
  const { harmony, metre, feel, pickup } = requireShape(phrase, { harmony: 'text' }, PHRASE);
  return makeChart(makeForm(readHarmony(harmony).bars, { metre, feel }), key, { pickup });
}

/** Semitones of the root of the sounding chord above the tonic of a chart, 0 to 11. */
export function rootAbove(chart: Chart, tick: number): number {
  const chord = soundingChord(chart, tick);
  return chord === null ? 0 : toPitchClass(itemAt(chord.tones, 0).pitchClass - tonicOf(chart));
}

/** The chord at a tick; in a pickup the one it leads to, in a break the one before it. */
export function soundingChord(chart: Chart, tick: number): Chord | null {
  const { spans, pickup } = chart;
  const at = chordAt(chart, Math.max(tick, pickup))?.chord;
  if (at) return at;
  const sounding = spans.filter(({ chord }) => chord !== null);
  const before = sounding.filter(({ start }) => start <= tick).at(-1);
  return (before ?? sounding[0])?.chord ?? null;
}

/** The pitch class of the tonic of a chart. */
export function tonicOf({ key }: Pick<Chart, 'key'>): number {
  return parseKey(key).pitchClass;
}

/** Semitones of a degree above what it is counted from. */
export function semitonesOf(degree: ScaleDegree): number {
  return SCALE_DEGREES.indexOf(degree);
}

/** Ticks of the whole phrase, its pickup included. */
export function phraseTicks(phrase: Pick<Phrase, 'harmony' | 'metre' | 'pickup'>): number {
  return phrase.pickup + barsOf(phrase) * parseMetre(phrase.metre).barTicks;
}
