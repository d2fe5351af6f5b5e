import type { Metre } from '@reedplate/line';
import type { Chord, KeyName, Mode } from '@reedplate/pitch';

/** Ways of feeling the beat: even eighths, swung eighths, and slow beats each of three eighths. */
export const FEELS = Object.freeze(['straight', 'shuffle', 'slow-12/8'] as const);

/** How the beat is felt. */
export type Feel = (typeof FEELS)[number];

/** A chord within a bar of a form. */
export interface FormChord {
  /** Roman numeral in canonical text, as `Numeral.text` of `@reedplate/pitch`; null is no chord (N.C.). */
  readonly numeral: string | null;
  /**
   * Share of the bar, in parts: chords of weights 3 and 1 take three quarters and one quarter. A
   * whole number from 1 to 64.
   * @minimum 1
   * @maximum 64
   * @asType integer
   */
  readonly weight: number;
}

/** One bar: its chords in order, at least one. */
export type FormBar = readonly FormChord[];

/** A chord form without a key. */
export interface Form {
  /** Lower-case words with hyphens, unique in the catalogue. */
  readonly id: string;
  readonly name: string;
  readonly description: string;
  /** Mode of the tonic chord: what key a band names for it. */
  readonly mode: Mode;
  readonly metre: Metre;
  readonly feel: Feel;
  readonly bars: readonly FormBar[];
  /** Where it is used. */
  readonly use: string;
  /** A named publication, or `common practice`, or `from memory`. */
  readonly source: string;
}

/** A chord sounding for a time: one written chord of one bar of one chorus. */
export interface ChordSpan {
  /**
   * First tick, counted from the beginning of the chart (its pickup included).
   * @minimum 0
   * @asType integer
   */
  readonly start: number;
  /**
   * First tick after it.
   * @minimum 1
   * @asType integer
   */
  readonly end: number;
  /**
   * Chorus, from 1; 0 in the introduction.
   * @minimum 0
   * @asType integer
   */
  readonly chorus: number;
  /**
   * Bar of the whole chart, from 1.
   * @minimum 1
   * @asType integer
   */
  readonly bar: number;
  /**
   * Bar within the form, from 1; in the introduction the bar it was taken from.
   * @minimum 1
   * @asType integer
   */
  readonly barOfForm: number;
  /**
   * Felt beat it begins on, from 1.
   * @minimum 1
   */
  readonly beat: number;
  /** Canonical Roman numeral; null in a break (N.C.). */
  readonly numeral: string | null;
  /** The chord spelled in the key; null in a break. */
  readonly chord: Chord | null;
}

/** A form realised in a key: chord spans on the beat grid, covering every bar without gap. */
export interface Chart {
  /** Id of the form, or of the text it was written in. */
  readonly form: string;
  readonly key: KeyName;
  readonly metre: Metre;
  readonly feel: Feel;
  /** Felt beats a minute, where known. */
  readonly tempo?: number;
  /**
   * Times through the form.
   * @minimum 1
   * @asType integer
   */
  readonly choruses: number;
  /**
   * Bars before the first chorus, where there are any.
   * @minimum 1
   * @asType integer
   */
  readonly intro?: number;
  /**
   * Ticks before bar 1.
   * @minimum 0
   * @asType integer
   */
  readonly pickup: number;
  /**
   * Bars of the introduction and all choruses together.
   * @minimum 1
   * @asType integer
   */
  readonly bars: number;
  readonly spans: readonly ChordSpan[];
}
