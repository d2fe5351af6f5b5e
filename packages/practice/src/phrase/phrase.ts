import type { Feel } from '@reedplate/form';
import type { TechniqueLevel } from '@reedplate/layout';
import type { Metre } from '@reedplate/line';
import type { ScaleDegree } from '@reedplate/pitch';
import type { PositionNumber } from '@reedplate/position';

/** What a phrase is for, in the words of the trade. */
export const PHRASE_KINDS = Object.freeze([
  'riff',
  'lick',
  'fill',
  'call',
  'response',
  'intro',
  'turnaround',
  'ending',
  'chord-rhythm',
  'chorus',
] as const);

/** What a phrase is for; see {@link PHRASE_KINDS}. */
export type PhraseKind = (typeof PHRASE_KINDS)[number];

/** How a note's pitch moves: up into it, down out of it, or down and back. */
export const BEND_SHAPES = Object.freeze(['scoop', 'fall', 'dip'] as const);

/** How a note's pitch moves; see {@link BEND_SHAPES}. */
export type BendShape = (typeof BEND_SHAPES)[number];

/** A move of pitch within a note. */
export interface PhraseBend {
  readonly shape: BendShape;
  /**
   * How far below the note, in cents.
   * @minimum 1
   * @maximum 300
   * @asType integer
   */
  readonly cents: number;
}

/** A note of a phrase: its time, and its pitch as a degree. */
export interface PhraseNote {
  /**
   * Ticks from the beginning of the phrase, its pickup included.
   * @minimum 0
   * @asType integer
   */
  readonly at: number;
  /**
   * Ticks held.
   * @minimum 1
   * @asType integer
   */
  readonly length: number;
  /** Degree above the tonic of the key, or above the root of the chord: see `Phrase.from`. */
  readonly degree: ScaleDegree;
  /**
   * Octaves above the one that begins on the tonic where the phrase is at home; the octave of a root
   * is the one above that tonic.
   * @minimum -4
   * @maximum 4
   * @asType integer
   */
  readonly octave: number;
  /** Left out where it is not struck harder than its neighbours. */
  readonly accent?: boolean;
  /** Left out where it is no grace note. */
  readonly grace?: boolean;
  readonly bend?: PhraseBend;
}

/** How hard a phrase is, from 1, first lessons, to 5; {@link PHRASE_GRADES} says what each allows. */
export type PhraseGrade = 1 | 2 | 3 | 4 | 5;

/** A short line kept by degrees, so that it moves to any chord, key and harp. */
export interface Phrase {
  /** Lower-case words with hyphens. */
  readonly id: string;
  readonly name: string;
  readonly kind: PhraseKind;
  /**
   * What the degrees are counted from: the tonic of the key, or the root of the chord that sounds, so
   * that the phrase moves with the chords.
   */
  readonly from: 'key' | 'chord';
  /** The chords it is made for, bar by bar, in the marks that `parseForm` of `@reedplate/form` reads. */
  readonly harmony: string;
  readonly metre: Metre;
  readonly feel: Feel;
  /**
   * Ticks before its first bar.
   * @minimum 0
   * @asType integer
   */
  readonly pickup: number;
  /** The position it is written for. */
  readonly position: PositionNumber;
  /** What a player must have for it on a standard harp in that position. */
  readonly level: TechniqueLevel;
  readonly grade: PhraseGrade;
  /** What it trains. */
  readonly trains: string;
  /** Where it comes from, or the reason for it. */
  readonly source: string;
  /** By time, then by pitch. Notes that begin together are as long as each other. */
  readonly notes: readonly PhraseNote[];
}
