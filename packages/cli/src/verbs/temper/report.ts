import {
  type Breath,
  chordTuning,
  type Hole,
  nameOnHarp,
  type TunedHarp,
  type TunedReed,
} from '@reedplate/layout';
import type { KeyName, NoteNameWithOctave } from '@reedplate/pitch';

/** A reed as it is tuned, with its note by name. */
export interface TuneReed {
  readonly hole: Hole;
  readonly breath: Breath;
  readonly note: NoteNameWithOctave;
  /** Cents above equal temperament, to a tenth. */
  readonly cents: number;
  /** Hz, to a hundredth. */
  readonly frequency: number;
}

/** Two holes of a chord sounding together. */
export interface TuneInterval {
  readonly lower: Hole;
  readonly upper: Hole;
  /** The just ratio it is measured against: `5/4`. */
  readonly ratio: string;
  /** Cents as it is tuned, to a tenth. */
  readonly cents: number;
  /** Cents wider (positive) or narrower than the ratio, to a tenth. */
  readonly deviation: number;
  /** Beats a second, to a tenth. */
  readonly beats: number;
}

/** What `reedplate temper --json` prints. */
export interface TemperReport {
  readonly tuning: string;
  readonly key: KeyName;
  readonly temperament: string;
  /** Frequency of A4 in Hz. */
  readonly a4: number;
  /** From hole 1 up, blow before draw. */
  readonly reeds: readonly TuneReed[];
  /** Every pair of the holes asked about; empty where none are. */
  readonly intervals: readonly TuneInterval[];
}

/** Which holes {@link temperReport} measures together. */
export interface TemperReportOptions {
  /** Holes played together, at least two; default none. */
  readonly holes?: readonly number[];
  /** Default `draw`. */
  readonly breath?: Breath;
}

/**
 * The frequencies of a tuned harp, and how just a chord of it is.
 *
 * @throws ReedplateError as `chordTuning`
 */
export function temperReport(tuned: TunedHarp, options: TemperReportOptions = {}): TemperReport {
  const { holes = [], breath = 'draw' } = options;
  const { harp, temperament, a4, reeds } = tuned;
  return {
    tuning: harp.tuning,
    key: harp.key,
    temperament,
    a4,
    reeds: reeds.map((reed) => ({
      hole: reed.hole,
      breath: reed.breath,
      note: nameOnHarp(harp, reed.pitch),
      cents: rounded(reed.cents, 10),
      frequency: rounded(reed.frequency, 100),
    })),
    intervals: holes.length === 0 ? [] : intervalsOf(tuned, holes, breath),
  };
}

function intervalsOf(
  tuned: TunedHarp,
  holes: readonly number[],
  breath: Breath,
): readonly TuneInterval[] {
  const { reeds, intervals } = chordTuning(tuned, holes, breath);
  const holeAt = (index: number): Hole => (reeds[index] as TunedReed).hole;
  return intervals.map(({ lower, upper, ratio, cents, deviation, beats }) => ({
    lower: holeAt(lower),
    upper: holeAt(upper),
    ratio: `${ratio.numerator}/${ratio.denominator}`,
    cents: rounded(cents, 10),
    deviation: rounded(deviation, 10),
    beats: rounded(beats, 10),
  }));
}

/** Rounded to a part of one, without a negative zero. */
function rounded(value: number, parts: number): number {
  return Math.round(value * parts) / parts + 0;
}
