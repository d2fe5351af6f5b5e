import { requireShape, requireShapes } from '@reedplate/pitch';
import { positionByNumber } from '@reedplate/position';
import type { ChordPlace, KeyChord, KeyChords } from './key-chords.js';

const SHAPE = { key: 'text', harp: 'text', position: 'number', chords: 'list' } as const;
const KEY_CHORDS = {
  what: 'the chords of a key, as keyChords gives them',
  code: 'OPTION_UNKNOWN',
} as const;

/** Common practice, no source. */
const WHY = [
  'A blues stands on I, IV and V: home, a step away from home, and the chord that leads back.',
  'All three are played with a flat seventh, so each could lead on, and none of them sounds finished.',
  'With the notes of these three every note of the scale has a chord.',
];

/**
 * The chords of a key in words: which they are, why a blues needs three of them, and which the harp gives
 * whole, with breath and holes. The first page of a lesson.
 *
 * @throws ReedplateError `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { describeKeyChords, keyChords } from '@reedplate/practice';
 *
 * describeKeyChords(keyChords('G', 'C'))[0];
 * // => 'The chords of G: I G, ii Am, iii Bm, IV C, V D, vi Em, vii° F#dim.'
 * ```
 */
export function describeKeyChords(given: KeyChords): readonly string[] {
  const { key, harp, position, chords } = requireShape(given, SHAPE, KEY_CHORDS);
  requireShapes(chords, { numeral: 'text', chord: 'object', whole: 'list' }, KEY_CHORDS);
  const all = chords.map(({ numeral, chord }) => `${said(numeral)} ${chord.symbol}`);
  const { ordinal } = positionByNumber(position);
  return Object.freeze([
    `The chords of ${key}: ${all.join(', ')}.`,
    ...WHY,
    `On a harp in ${harp}, ${ordinal} position:`,
    ...chords.filter(({ inBlues, whole }) => inBlues || whole.length > 0).map(sayChord),
  ]);
}

function said(numeral: string): string {
  return numeral.replace(/dim$/u, '°');
}

function sayChord({ numeral, chord, whole, natural }: KeyChord): string {
  const name = `${said(numeral)}, ${chord.symbol}`;
  if (whole.length > 0) return `${name}: whole on ${sayPlaces(whole)}.`;
  return natural
    ? `${name}: not whole on neighbouring holes; its tones one after the other.`
    : `${name}: not whole, and not all its tones without bends.`;
}

const MOST_SAID = 3;

/** The smallest shapes of each breath, from the low end: a wider one holds one of them. */
function sayPlaces(whole: readonly ChordPlace[]): string {
  const smallest = whole.filter(
    ({ breath, holes }) =>
      !whole.some(
        (other) =>
          other.breath === breath &&
          other.holes.length < holes.length &&
          other.holes.every((hole) => holes.includes(hole)),
      ),
  );
  const said = smallest
    .slice(0, MOST_SAID)
    .map(({ breath, holes }) => `${breath} ${holes.join(' ')}`);
  return `${said.join(', ')}${smallest.length > MOST_SAID ? ', and so on upwards' : ''}`;
}
