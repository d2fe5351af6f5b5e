import { chordAvailability } from '@reedplate/chord-tone';
import { type Breath, type HarpLike, harpName, type KnownTunings, toHarp } from '@reedplate/layout';
import {
  type Chord,
  chordOfNumeral,
  deepFreeze,
  type KeyLike,
  type KeyName,
  type Mode,
  type OptionNames,
  requireOptions,
  toKey,
} from '@reedplate/pitch';
import { type PositionNumber, positionOf } from '@reedplate/position';

/** Where a harp sounds a chord whole: neighbouring holes of one breath. */
export interface ChordPlace {
  readonly breath: Breath;
  readonly holes: readonly number[];
}

/** A chord of a key, and what a harp gives of it. */
export interface KeyChord {
  /** Roman numeral of the triad: `I`, `ii`, `vii°` is written `viidim`. */
  readonly numeral: string;
  readonly chord: Chord;
  /** The four-note chord on the same step. */
  readonly seventh: Chord;
  /** Its part in a blues: one of the three that the form stands on, or none of its own. */
  readonly inBlues: boolean;
  /** Where the harp gives its root, third and fifth together. */
  readonly whole: readonly ChordPlace[];
  /** Whether all three can at least be had one after the other as unbent notes. */
  readonly natural: boolean;
}

/** The chords of a key on a harp. */
export interface KeyChords {
  readonly key: KeyName;
  readonly harp: string;
  readonly position: PositionNumber;
  readonly chords: readonly KeyChord[];
}

/** The triads and sevenths on each step. Theory of any book: Open Music Theory, "Roman Numerals". */
const STEPS: Readonly<Record<Mode, readonly (readonly [string, string])[]>> = {
  major: [
    ['I', 'Imaj7'],
    ['ii', 'ii7'],
    ['iii', 'iii7'],
    ['IV', 'IVmaj7'],
    ['V', 'V7'],
    ['vi', 'vi7'],
    ['viidim', 'viim7b5'],
  ],
  minor: [
    ['i', 'i7'],
    ['iidim', 'iim7b5'],
    ['bIII', 'bIIImaj7'],
    ['iv', 'iv7'],
    ['v', 'v7'],
    ['bVI', 'bVImaj7'],
    ['bVII', 'bVII7'],
  ],
};

/** First, fourth and fifth step. */
const BLUES_STEPS: ReadonlySet<number> = new Set([0, 3, 4]);

/** How {@link keyChords} looks. */
export interface KeyChordsOptions {
  /** Tunings of one's own, for a harp that is named in one. */
  readonly known?: KnownTunings;
}

const OPTIONS: OptionNames<KeyChordsOptions> = { known: true };

/**
 * The seven chords of a key, major or natural minor, and which of them a harp gives whole and where.
 *
 * @throws ReedplateError `KEY_UNKNOWN`, `HARP_INVALID`, `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { keyChords } from '@reedplate/practice';
 *
 * const { chords, position } = keyChords('G', 'C');
 * position; // => 2
 * chords.map(({ chord }) => chord.symbol); // => ['G', 'Am', 'Bm', 'C', 'D', 'Em', 'F#dim']
 * chords.filter(({ whole }) => whole.length > 0).map(({ numeral }) => numeral); // => ['I', 'IV']
 * keyChords('H' as 'G', 'C'); // throws KEY_UNKNOWN
 * ```
 */
export function keyChords(
  songKey: KeyLike,
  given: HarpLike,
  options: KeyChordsOptions = {},
): KeyChords {
  const { known } = requireOptions(options, OPTIONS, 'keyChords');
  const key = toKey(songKey);
  const harp = toHarp(given, known);
  return deepFreeze({
    key: key.name,
    harp: harpName(harp),
    position: positionOf(harp, key),
    chords: STEPS[key.mode].map(([numeral, seventh], step) => {
      const chord = chordOfNumeral(numeral, key);
      const { whole, targets } = chordAvailability(chord, harp, { level: 'natural' });
      return {
        numeral,
        chord,
        seventh: chordOfNumeral(seventh, key),
        inBlues: BLUES_STEPS.has(step),
        whole: whole.map(({ breath, holes }) => ({ breath, holes: [...holes] })),
        natural: chord.tones.every(({ degree }) => targets.some((each) => each.degree === degree)),
      };
    }),
  });
}
