import type { BarDifference, Chart } from '@reedplate/form';
import type { KeyName } from '@reedplate/pitch';

/** A form that a band may be playing. */
export interface HeardForm {
  /** Id of the form. */
  readonly form: string;
  readonly name: string;
  readonly key: KeyName;
}

/** How sure each part of an answer is, by its lead over the best rival. An order, not calibrated odds. */
export interface BandConfidence {
  /**
   * That the form is the right one, or one of those that fit alike; where none fits, that none does.
   * @minimum 0
   * @maximum 1
   */
  readonly form: number;
  /**
   * @minimum 0
   * @maximum 1
   */
  readonly key: number;
  /**
   * That bars begin where they are heard to begin.
   * @minimum 0
   * @maximum 1
   */
  readonly downbeat: number;
  /**
   * That the tempo is right within 2 %, and is not its half or its double.
   * @minimum 0
   * @maximum 1
   */
  readonly tempo: number;
}

/** What a band plays: its chords as a chart, and which form that is. */
export interface BandReading {
  /** What is played, bar by bar, in bars and beats: that of the form where one is followed, with what differs. */
  readonly chart: Chart;
  /** The form that is followed; null where no form of the catalogue fits. */
  readonly form: HeardForm | null;
  /** Other forms that fit as well, but for what an ear cannot tell; the nearest first. */
  readonly alike: readonly HeardForm[];
  /** Where the band leaves the form, in order of the bars; empty where it does not, or where none is followed. */
  readonly differences: readonly BarDifference[];
  readonly confidence: BandConfidence;
}

/** A bar of what was heard. */
export interface HeardBar {
  /**
   * Second of the recording at which it begins.
   * @minimum 0
   */
  readonly start: number;
  /**
   * Second at which it ends.
   * @minimum 0
   */
  readonly end: number;
  /** Its chords in lead-sheet marks. */
  readonly chords: string;
  /**
   * How sure these chords are.
   * @minimum 0
   * @maximum 1
   */
  readonly confidence: number;
}

/** What is heard in a recording of a band. */
export interface HeardBand extends BandReading {
  /** The bars of the chart, with their seconds. */
  readonly bars: readonly HeardBar[];
  /** Second of each felt beat of the chart, and of the end of the last. */
  readonly beats: readonly number[];
  /** Felt beats a minute, as they usually are. */
  readonly tempo: number;
  /** Hertz of A4 as the band is tuned. */
  readonly reference: number;
  /**
   * Cents from 440 hertz, to the nearest semitone.
   * @minimum -50
   * @maximum 50
   */
  readonly cents: number;
  /** Seconds of the recording. */
  readonly seconds: number;
}
