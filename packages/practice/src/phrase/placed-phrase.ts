import type { Harp, Sounding } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import type { ScaleDegree } from '@reedplate/pitch';

/** A note that is played otherwise than the phrase has it. */
export interface PhraseChange {
  /** Which note of the phrase, from 0. */
  readonly note: number;
  readonly degree: ScaleDegree;
  /** MIDI number that the phrase asks for. */
  readonly wanted: number;
  /** MIDI number played; null where the note is left out of a chord. */
  readonly played: number | null;
  /**
   * The harp has it `not-at-level`, or `not-on-harp` at all; `no-grip` sounds it together with the
   * others; or the chord of the chart has `another-tone` there, a minor third where the phrase was made
   * for a major one.
   */
  readonly why: 'not-at-level' | 'not-on-harp' | 'no-grip' | 'another-tone';
}

/** A bar in which the chart has another chord than the phrase was made for. */
export interface OtherHarmony {
  /** Bar of the chart, from 1. */
  readonly bar: number;
  /** Symbol of the chord the phrase was made for, in the chart's key. */
  readonly madeFor: string;
  /** Symbol of the chord that the chart has; null in a break. */
  readonly found: string | null;
}

/** A phrase on a harp, over bars of a chart. */
export interface PlacedPhrase {
  readonly playable: true;
  /** Id of the phrase. */
  readonly phrase: string;
  readonly harp: Harp;
  /** Bar of the chart in which bar 1 of the phrase stands, from 1. */
  readonly bar: number;
  /** Octaves above the lowest one whose tonic the harp reaches. */
  readonly octave: number;
  /** The notes in the time of the chart. */
  readonly line: Line;
  /** What sounds each moment of the line, from the low end: the easiest there is. */
  readonly soundings: readonly (readonly Sounding[])[];
  /** The same as tab with rhythm, from the bar in which it begins. */
  readonly tab: string;
  /** Effort of the path, in points. */
  readonly effort: number;
  /** What is played otherwise than the phrase has it; empty where it is exact. */
  readonly changes: readonly PhraseChange[];
  /** Where the chart has other chords than the phrase was made for. */
  readonly otherHarmony: readonly OtherHarmony[];
}

/** Why a phrase cannot be placed: the harp has no tone of a chord at the level. */
export interface PhraseNotPlaced {
  readonly playable: false;
  readonly phrase: string;
  readonly harp: Harp;
  readonly bar: number;
  /** Symbols of the chords of which the harp has no tone at this level. */
  readonly without: readonly string[];
}
