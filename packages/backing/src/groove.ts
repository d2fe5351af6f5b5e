/** Sounds of a drum kit that a groove may ask for. */
export const DRUM_NAMES = Object.freeze([
  'kick',
  'snare',
  'rim',
  'hat',
  'pedalHat',
  'ride',
  'crash',
  'tom',
] as const);

/** A sound of a drum kit; see {@link DRUM_NAMES}. */
export type DrumName = (typeof DRUM_NAMES)[number];

/**
 * A rhythm of a bar in signs: a group for each beat, a sign for each part of it. `X` is accented, `x`
 * played, `o` soft, `.` silent: `X. x. X. x.`. Bars of more beats begin it anew.
 */
export type Pattern = string;

/** What the bass plays under a chord. */
export const BASS_FIGURES = Object.freeze([
  'walk',
  'two-beat',
  'boogie',
  'eighths',
  'syncopated',
] as const);

/** What the bass plays; see {@link BASS_FIGURES}. */
export type BassFigure = (typeof BASS_FIGURES)[number];

/** How a chord is played: struck and let go, held to the next, or as the boogie of fifth and sixth. */
export const COMPING_FIGURES = Object.freeze(['stabs', 'held', 'fifth-and-sixth'] as const);

/** How a chord is played; see {@link COMPING_FIGURES}. */
export type CompingFigure = (typeof COMPING_FIGURES)[number];

/** How a band plays: rhythms of each part as data. */
export interface Groove {
  /** Lower-case words with hyphens. */
  readonly id: string;
  readonly name: string;
  /** What it is for. */
  readonly use: string;
  /** Parts that it cuts a beat in: 2 are swung where the feel says so, 3 are those of 12/8. */
  readonly parts: 2 | 3 | 4;
  readonly drums: Readonly<Partial<Record<DrumName, Pattern>>>;
  /** Ends of a four-bar phrase for the last two beats, one of them drawn each time. */
  readonly fills: readonly Readonly<Partial<Record<DrumName, Pattern>>>[];
  readonly bass: BassFigure;
  readonly comping: { readonly figure: CompingFigure; readonly rhythm: Pattern };
}
