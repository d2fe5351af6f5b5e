import type { KeyName } from '@reedplate/pitch';

/** What is different in one bar. */
export interface BarDifference {
  /**
   * `root`: another chord for some of the bar; `quality`: the same roots with another third,
   * seventh or extension, or a break; `extra`: a bar that the form has not; `missing`: a bar of
   * the form that was left out.
   */
  readonly kind: 'root' | 'quality' | 'extra' | 'missing';
  /** Bar that was given, from 1; null where it is missing. */
  readonly bar: number | null;
  /** Bar of the form, from 1; null where the bar is extra. */
  readonly barOfForm: number | null;
  /** Chords that were given; null where the bar is missing. */
  readonly given: string | null;
  /** Chords of the form in the key; null where the bar is extra. */
  readonly expected: string | null;
  /**
   * In bars: 1 for a wholly different bar.
   * @minimum 0
   * @maximum 1
   */
  readonly cost: number;
}

/** A form in a key, compared with the bars that were given. */
export interface FormMatch {
  /** Id of the form. */
  readonly form: string;
  readonly name: string;
  /**
   * Id of the turnaround or ending of the catalogue that was played instead of the form's own last two
   * bars; null for the form's own.
   */
  readonly closing: string | null;
  readonly key: KeyName;
  /**
   * Times through the form that the bars are nearest to.
   * @minimum 1
   * @asType integer
   */
  readonly choruses: number;
  /**
   * All differences together, in bars.
   * @minimum 0
   */
  readonly cost: number;
  /**
   * Share of the bars that agree, from 0 to 1.
   * @minimum 0
   * @maximum 1
   */
  readonly agreement: number;
  /** In order of the bars; empty where all agree. */
  readonly differences: readonly BarDifference[];
}

/** Which form some bars are. */
export interface FormRecognition {
  /**
   * Whether the best is near: at least `LEAST_FORM_AGREEMENT` of the bars agree. Where not, the bars are
   * no form of the catalogue, and `best` and `others` say no more than what they are least far from.
   */
  readonly near: boolean;
  /** The nearest form in its key; several where they are equally near. */
  readonly best: readonly FormMatch[];
  /** The next nearest, nearest first. */
  readonly others: readonly FormMatch[];
  /** Whether more than one form or key is nearest. */
  readonly tie: boolean;
  /**
   * From 0 to 1: the lesser of the two below. 1 where the bars are just one form in just one key; 0 on
   * a tie, and where none is near.
   * @minimum 0
   * @maximum 1
   */
  readonly confidence: number;
  /**
   * How sure the form is, from 0 to 1: the agreement of the best, times the part by which its cost is
   * below that of the next form in the same key.
   * @minimum 0
   * @maximum 1
   */
  readonly formConfidence: number;
  /**
   * How sure the key is, from 0 to 1: the agreement of the best, times the part by which its cost is
   * below that of the nearest form in another key. Where the key was told, the agreement alone.
   * @minimum 0
   * @maximum 1
   */
  readonly keyConfidence: number;
}
