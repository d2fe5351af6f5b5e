import { type HarpLike, toHarp } from '@reedplate/layout';
import {
  type Chord,
  type ChordDegree,
  type ChordLike,
  type OptionNames,
  requireOptions,
  triadOf,
} from '@reedplate/pitch';
import { chordFamily } from './chord-family.js';
import { type ChordShape, chordShapes, type ShapeOptions } from './chord-shape.js';
import type { Clash } from './clash.js';
import { type Target, targetsOf } from './target.js';
import { toChord } from './to-chord.js';

/**
 * What a harp cannot give a chord: `NO_WHOLE_CHORD`, neither its root, third and fifth nor all its
 * tones lie together;
 * `CLASHING_CHORD`, neighbours hold its root and a clash; `NO_UNBENT_TONE`, a tone is only
 * had by bending or overbending; `NO_TONE`, a tone is not had at all at this level.
 */
export type ChordWarningCode = 'NO_WHOLE_CHORD' | 'CLASHING_CHORD' | 'NO_UNBENT_TONE' | 'NO_TONE';

/** A plain warning about a chord on a harp. */
export interface ChordWarning {
  readonly code: ChordWarningCode;
  /** The degrees of the chord it is about. */
  readonly degrees: readonly ChordDegree[];
  /** For a clashing chord: the shape, and what clashes in it. */
  readonly shape?: ChordShape;
  readonly clash?: Clash;
}

/** What a harp gives a chord. */
export interface ChordAvailability {
  readonly chord: Chord;
  readonly targets: readonly Target[];
  /** Shapes with all its tones, or root, third and fifth, and no clash: the chord can be played whole. */
  readonly whole: readonly ChordShape[];
  /** Shapes with two or more different tones of the chord and no other note. */
  readonly partial: readonly ChordShape[];
  readonly warnings: readonly ChordWarning[];
  /** Every shape, as `chordShapes` judges it; only where asked for. */
  readonly shapes?: readonly ChordShape[];
}

/** How {@link chordAvailability} looks. */
export interface AvailabilityOptions extends ShapeOptions {
  /** Whether to give every shape as well; default false. */
  readonly shapes?: boolean;
}

/** The names of all options of an availability. */
export const AVAILABILITY_OPTIONS: OptionNames<AvailabilityOptions> = {
  style: true,
  level: true,
  shapes: true,
  known: true,
};

/**
 * What a harp gives a chord: its targets, the shapes that sound it whole or in part, and plain
 * warnings where it cannot be had or where neighbouring holes contradict it.
 *
 * @param chord a chord, or its symbol
 * @throws ReedplateError `CHORD_UNKNOWN`, or `OPTION_UNKNOWN` for the style or level
 * @example
 * ```ts
 * import { chordAvailability } from '@reedplate/chord-tone';
 *
 * const five = chordAvailability('D7', 'C');
 * five.whole; // => []
 * five.warnings.map(({ code }) => code); // => ['NO_WHOLE_CHORD', 'CLASHING_CHORD', 'NO_UNBENT_TONE']
 * five.warnings[1]?.shape?.holes; // => [4, 5]
 * ```
 */
export function chordAvailability(
  chord: ChordLike,
  given: HarpLike,
  options: AvailabilityOptions = {},
): ChordAvailability {
  const {
    style,
    level,
    known,
    shapes: withShapes = false,
  } = requireOptions(options, AVAILABILITY_OPTIONS, 'chordAvailability');
  const parsed = toChord(chord);
  const harp = toHarp(given, known);
  const which = level === undefined ? {} : { level };
  const shapes = chordShapes(parsed, harp, { ...which, ...(style === undefined ? {} : { style }) });
  const targets = targetsOf(parsed, harp, which);
  const whole = shapes.filter(isWhole);
  const partial = shapes.filter(isPartial);
  const warnings = [
    ...(whole.length > 0 || chordFamily(parsed) === 'open' ? [] : [noWholeChord(parsed)]),
    ...(whole.length > 0 ? [] : clashingChord(shapes)),
    ...toneWarnings(parsed, targets),
  ];
  return Object.freeze({
    chord: parsed,
    targets,
    whole: Object.freeze(whole),
    partial: Object.freeze(partial),
    warnings: Object.freeze(warnings),
    ...(withShapes ? { shapes } : {}),
  });
}

/** A power chord has no triad, and is whole with what it has. */
function isWhole({ triad, completeness, clashes }: ChordShape): boolean {
  return completeness === 'complete' || (triad && clashes.length === 0);
}

function isPartial(shape: ChordShape): boolean {
  const different = new Set(shape.tones.map(({ degree }) => degree)).size;
  return shape.completeness === 'partial' && !isWhole(shape) && different >= 2;
}

function noWholeChord(chord: Chord): ChordWarning {
  const degrees = triadOf(chord).map(({ degree }) => degree);
  return Object.freeze({ code: 'NO_WHOLE_CHORD', degrees: Object.freeze(degrees) });
}

/** The lowest neighbours that hold the root and a note against the third: what a player meets first. */
function clashingChord(shapes: readonly ChordShape[]): readonly ChordWarning[] {
  const shape = shapes.find(
    ({ gesture, tones, clashes }) =>
      gesture === 'double-stop' &&
      tones.some(({ degree }) => degree === '1') &&
      clashes.some(({ above }) => above === '3' || above === 'b3'),
  );
  const clash = shape?.clashes[0];
  if (shape === undefined || clash === undefined) return [];
  const degrees = Object.freeze(clash.against === undefined ? [] : [clash.against]);
  return [Object.freeze({ code: 'CLASHING_CHORD', degrees, shape, clash })];
}

function toneWarnings({ tones }: Chord, targets: readonly Target[]): readonly ChordWarning[] {
  const had = new Set(targets.map(({ degree }) => degree));
  const natural = new Set(
    targets.filter(({ sounding }) => sounding.technique === 'natural').map(({ degree }) => degree),
  );
  const degrees = tones.map(({ degree }) => degree);
  const missing = degrees.filter((degree) => !had.has(degree));
  const bent = degrees.filter((degree) => had.has(degree) && !natural.has(degree));
  return [warnOf('NO_UNBENT_TONE', bent), warnOf('NO_TONE', missing)].flat();
}

function warnOf(code: ChordWarningCode, degrees: readonly ChordDegree[]): readonly ChordWarning[] {
  if (degrees.length === 0) return [];
  return [Object.freeze({ code, degrees: Object.freeze(degrees) })];
}
