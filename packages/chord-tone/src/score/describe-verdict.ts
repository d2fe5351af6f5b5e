import { requireOneOf, requireShape } from '@reedplate/pitch';
import { countInWords } from './in-words.js';
import type { OtherHarp } from './other-harp.js';
import type { Verdict, VerdictCode } from './verdict.js';

/**
 * A verdict in English, in words that a student understands.
 *
 * @example
 * ```ts
 * import { describeVerdict } from '@reedplate/chord-tone';
 *
 * describeVerdict({ code: 'TAKE_BARS_LATE', by: 1, otherHarp: null });
 * // => 'You came in 1 bar late: a bar earlier, your notes would fit. Or the take begins with a count-in of 1 bar.'
 * ```
 */
export function describeVerdict(verdict: Verdict): string {
  const words = { what: 'the verdict of a score', code: 'OPTION_UNKNOWN' } as const;
  const { code, by, otherHarp } = requireShape(verdict, { by: 'number' }, words);
  const codes = Object.keys(SENTENCES) as VerdictCode[];
  return SENTENCES[requireOneOf(code, codes, { what: 'the code of a verdict' })](by, otherHarp);
}

type Sentence = (by: number, otherHarp: OtherHarp | null) => string;

const SENTENCES: Readonly<Record<VerdictCode, Sentence>> = {
  TAKE_OTHER_HARP: (by, harps) =>
    harps === null
      ? `Your notes fit another key, ${countInWords(Math.abs(by), 'semitone')} ${by > 0 ? 'higher' : 'lower'}: is it the right harp?`
      : `Your notes fit ${harps.fits}, and the song is in ${harps.key}: wrong harp. Take the ${harps.take} harp.`,
  TAKE_BARS_LATE: (by) =>
    `You came in ${countInWords(by, 'bar')} late: ${by === 1 ? 'a bar' : `${by} bars`} earlier, your notes would fit. Or the take begins with a count-in of ${countInWords(by, 'bar')}.`,
  TAKE_BARS_EARLY: (by) =>
    `You came in ${countInWords(by, 'bar')} early: ${by === 1 ? 'a bar' : `${by} bars`} later, your notes would fit.`,
  TAKE_BEATS_LATE: (by) =>
    `You know the changes, but you are ${countInWords(by, 'beat')} late throughout.`,
  TAKE_BEATS_EARLY: (by) =>
    `You know the changes, but you are ${countInWords(by, 'beat')} early throughout.`,
  STAYS_ON_ONE_CHORD: () => 'You stayed on one chord: the chords moved, and your notes did not.',
  CHORD_MISSED: (by) =>
    `You follow, but one chord is missing: the ${CHORD_NAMES.get(by) ?? 'other'} chord is played like the I chord.`,
  BARS_NOT_PLAYED: (by) =>
    `What you played is judged, but ${countInWords(by, 'bar')} stayed empty.`,
  TOO_LITTLE_TO_JUDGE: () => 'This is too little to judge: play a chorus.',
  FOLLOWS_EVERY_CHANGE: () => 'You follow the changes, and one hears every chord.',
  FOLLOWS_WELL: () => 'You follow the changes.',
  FOLLOWS_IN_PART: () => 'You follow in part: some of it would be the same over any chord.',
  HARDLY_FOLLOWS: () => 'One does not hear the chords in what you play: aim at one note of each.',
};

/** Chords by the semitones of their root above the tonic. */
const CHORD_NAMES: ReadonlyMap<number, string> = new Map([
  [5, 'IV'],
  [7, 'V'],
]);
