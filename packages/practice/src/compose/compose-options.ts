import { type Harp, type SoundingOptions, TECHNIQUE_LEVELS } from '@reedplate/layout';
import {
  HIGHEST_MIDI,
  LOWEST_MIDI,
  type OptionNames,
  ReedplateError,
  requireInteger,
  requireOneOf,
  requireOptions,
  requirePositive,
  requireSome,
} from '@reedplate/pitch';
import type { EffortModelLike, KnownModels } from '@reedplate/playability';
import { LINE_ENDINGS, type LineEnding, type MustHold } from './constraints.js';
import type { MelodyModel } from './melody-model.js';
import type { Density } from './rhythm.js';
import type { RhythmCell } from './rhythm-cells.js';

/** What a composed line must keep to, and what it likes; see {@link composeLine}. */
export interface ComposeOptions {
  /** Any whole number: the same seed gives the same line. Default 1. */
  readonly seed?: number;
  /** The soundings allowed. Default `bends`. */
  readonly level?: SoundingOptions['level'];
  /**
   * Lowest and highest MIDI number. Default the reeds of holes 1 to 6, where most blues is played (common
   * practice); with one of them given, the other is open.
   */
  readonly lowest?: number;
  readonly highest?: number;
  /**
   * A letter for each phrase of a chorus, all as long; the same letter is the same phrase again: note
   * for note over the same chords, over others in the same rhythm with few notes moved, and little. Default `AAB` for twelve bars, else another letter every four
   * bars.
   */
  readonly plan?: string;
  /** Notes that begin in a bar; the last bar of a phrase may have fewer. Default 2 to 6. */
  readonly density?: Density;
  /** Rhythms of a beat to draw from. Default our own, for beats of two or of three. */
  readonly cells?: readonly RhythmCell[];
  /** Whether a tone of the chord sounds at each change, or first after it. Default `true`. */
  readonly changes?: boolean;
  /** Within how many notes another than a chord tone goes on to a chord tone. Default 2. */
  readonly resolve?: number;
  /** Most semitones from note to note within a phrase. Default 9. */
  readonly leap?: number;
  /** What each chorus ends on. Default `chord-tone`. */
  readonly ending?: LineEnding;
  /** Most points of effort a bar, on the average of a phrase, but for air and held bends. Default no bound. */
  readonly effort?: number;
  /** Model that counts the effort. Default `intermediate`. */
  readonly effortModel?: EffortModelLike;
  /** What the melody likes; {@link learnMelody} makes one. Default learned from our phrases. */
  readonly model?: MelodyModel;
  /** Tunings and effort models of one's own, by their names. */
  readonly known?: KnownModels;
}

/** The options of `composeLine`. */
export const COMPOSE_OPTIONS: OptionNames<ComposeOptions> = {
  seed: true,
  level: true,
  lowest: true,
  highest: true,
  plan: true,
  density: true,
  cells: true,
  changes: true,
  resolve: true,
  leap: true,
  ending: true,
  effort: true,
  effortModel: true,
  model: true,
  known: true,
};

/** The options, each checked. */
export function readComposeOptions(options: ComposeOptions): ComposeOptions {
  const given = requireOptions(options, COMPOSE_OPTIONS, 'composeLine');
  const { seed, level, density, cells, effort, model } = given;
  if (seed !== undefined) {
    requireInteger(seed, { min: Number.MIN_SAFE_INTEGER, what: 'a seed' });
  }
  if (typeof level === 'string')
    requireOneOf(level, TECHNIQUE_LEVELS, { what: 'a technique level' });
  if (density !== undefined) checkDensity(density);
  if (cells !== undefined) checkCells(cells);
  if (effort !== undefined) requirePositive(effort, { what: 'points of effort a bar' });
  if (model !== undefined) checkModel(model);
  return given;
}

/** What must hold of the pitches, with the defaults. */
export function mustHoldOf(options: ComposeOptions, harp: Harp): MustHold {
  const { changes = true, resolve = 2, leap = 9, ending = 'chord-tone', effort } = options;
  const { lowest, highest } = rangeOf(options, harp);
  requireInteger(lowest, { min: LOWEST_MIDI, max: HIGHEST_MIDI, what: 'the lowest MIDI number' });
  requireInteger(highest, { min: lowest, max: HIGHEST_MIDI, what: 'the highest MIDI number' });
  requireInteger(resolve, { min: 0, what: 'a number of notes' });
  requireInteger(leap, { min: 0, what: 'a number of semitones' });
  requireOneOf(ending, LINE_ENDINGS, { what: 'an ending' });
  if (typeof changes !== 'boolean') throw invalid(changes, 'true or false', 'changes');
  return { changes, resolve, leap, ending, effort, range: { lowest, highest } };
}

function rangeOf({ lowest, highest }: ComposeOptions, { holes }: Harp): MustHold['range'] {
  if (lowest !== undefined || highest !== undefined) {
    return { lowest: lowest ?? LOWEST_MIDI, highest: highest ?? HIGHEST_MIDI };
  }
  const reeds = holes.slice(0, HOME).flatMap(({ blow, draw }) => [blow, draw]);
  return { lowest: Math.min(...reeds), highest: Math.max(...reeds) };
}

const HOME = 6;

function checkDensity(density: Density): void {
  const { fewest, most } = density ?? {};
  requireInteger(fewest, { min: 0, what: 'the fewest notes of a bar', where: { path: 'density' } });
  requireInteger(most, {
    min: Math.max(1, fewest),
    what: 'the most notes of a bar',
    where: { path: 'density' },
  });
}

function checkCells(cells: readonly RhythmCell[]): void {
  for (const [index, cell] of requireSome(cells, 'one rhythm of a beat').entries()) {
    const path = `cells[${index}]`;
    if (typeof cell !== 'object' || cell === null || !Array.isArray(cell.notes)) {
      throw invalid(cell, 'a rhythm of a beat, with notes and a weight', path);
    }
    requirePositive(cell.weight, { what: 'a weight', where: { path: `${path}.weight` } });
    let before = 0;
    for (const note of cell.notes) {
      const [start, length] = Array.isArray(note) ? note : [];
      if (!(start >= before && length > 0 && start + length <= 1 + ROUNDING)) {
        throw invalid(note, 'a start and a length within the beat, after the note before', path);
      }
      before = start + length - ROUNDING;
    }
  }
}

/** Thirds of a beat are not exact in binary. */
const ROUNDING = 1e-9;
const DEGREES = 12;

function checkModel({ transitions, leaps, chordTone }: MelodyModel): void {
  const rows = Array.isArray(transitions) ? transitions : [];
  const isSquare =
    rows.length === DEGREES && rows.every((row) => row.length === DEGREES && row.every(isWeight));
  if (!isSquare) throw invalid(transitions, '12 rows of 12 weights', 'model.transitions');
  if (!Array.isArray(leaps) || leaps.length === 0 || !leaps.every(isWeight)) {
    throw invalid(leaps, 'weights of leaps', 'model.leaps');
  }
  if (!(isWeight(chordTone) && chordTone >= 1)) {
    throw invalid(chordTone, 'a number from 1', 'model.chordTone');
  }
}

function isWeight(value: unknown): value is number {
  return typeof value === 'number' && value >= 0 && Number.isFinite(value);
}

function invalid(value: unknown, expected: string, path: string): ReedplateError {
  return new ReedplateError({ code: 'COMPOSE_INVALID', value, expected, where: { path } });
}
