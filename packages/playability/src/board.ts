import type { Harp, SoundingOptions } from '@reedplate/layout';
import { soundings } from '@reedplate/layout';
import { airRate } from './air.js';
import { type Choice, choicesOf, makeChoice } from './choice.js';
import type { EffortModel } from './effort-model.js';
import { type Figures, figuresOf } from './figures.js';
import {
  bendMoveTerm,
  breathTerm,
  chordTerm,
  holdRate,
  reachTerm,
  repeatTerm,
  techniqueTerm,
  timeNeeded,
} from './terms.js';

/** Choices of a harp with what they cost under a model, wherever time does not matter. */
export interface Board {
  readonly figures: Figures;
  readonly choices: readonly Choice[];
  /** Technique and chord, by choice. */
  readonly still: Float64Array;
  /** Thousandths a second of holding, and air steps a step of time, signed; by choice. */
  readonly holdRate: Float64Array;
  readonly airRate: Float64Array;
  /**
   * Reach, breath, bend moves and repeats: from the row's choice to the column's. The last row is
   * the beginning of a line.
   */
  readonly move: Float64Array;
  /** Seconds the move needs; same rows and columns. */
  readonly needed: Float64Array;
}

/** Sets out the costs of choices. */
export function makeBoard(choices: readonly Choice[], figures: Figures): Board {
  const size = choices.length;
  const still = new Float64Array(size);
  const hold = new Float64Array(size);
  const air = new Float64Array(size);
  const move = new Float64Array(size * (size + 1));
  const needed = new Float64Array(size * (size + 1));
  choices.forEach((to, column) => {
    still[column] = techniqueTerm(to, figures) + chordTerm(to, figures);
    hold[column] = holdRate(to, figures);
    air[column] = airRate(to, figures);
    move[size * size + column] = bendMoveTerm(null, to, figures);
    choices.forEach((from, row) => {
      const cell = row * size + column;
      move[cell] =
        reachTerm(from, to, figures) +
        breathTerm(from, to, figures) +
        bendMoveTerm(from, to, figures) +
        repeatTerm(from, to, figures);
      needed[cell] = timeNeeded(from, to, figures);
    });
  });
  return { figures, choices, still, holdRate: hold, airRate: air, move, needed };
}

/** A board and, for each set of pitches of a line, which of its choices sound it. */
export interface LaidOut {
  readonly board: Board;
  readonly ways: readonly (readonly number[])[];
}

/**
 * Lays the sets of pitches of a line, moved by semitones, out on a harp. A line of single notes uses
 * a kept board.
 */
export function layOut(
  sets: readonly (readonly number[])[],
  harp: Harp,
  model: EffortModel,
  setting: Required<Pick<SoundingOptions, 'level' | 'valved'>>,
  semitones = 0,
): LaidOut {
  const options: SoundingOptions = { level: setting.level, valved: setting.valved };
  const isSingle = sets.every(({ length }) => length === 1);
  if (isSingle && !Array.isArray(options.valved)) {
    const { board, ofPitch } = singleNoteBoard(harp, model, options);
    return { board, ways: sets.map(([pitch = -1]) => ofPitch[pitch + semitones] ?? []) };
  }
  const choices: Choice[] = [];
  const ways = sets.map((pitches) =>
    choicesOf(
      harp,
      pitches.map((pitch) => pitch + semitones),
      options,
    ).map((choice) => choices.push(choice) - 1),
  );
  return { board: makeBoard(choices, figuresOf(model)), ways };
}

/** The board of every single note of a harp, and which choices sound a pitch. */
interface SingleNoteBoard {
  readonly board: Board;
  readonly ofPitch: readonly (readonly number[] | undefined)[];
}

/**
 * Boards kept by model and harp, both of which must not change; by level and valves within.
 * Measured: studying 40 tunes of 80 notes in 24 ways takes 0.1 s of processor time, 1.3 s without.
 */
const KEPT = new WeakMap<EffortModel, WeakMap<Harp, Map<string, SingleNoteBoard>>>();

function singleNoteBoard(
  harp: Harp,
  model: EffortModel,
  options: SoundingOptions,
): SingleNoteBoard {
  const { level } = options;
  if (typeof level === 'object' || !isFixed(harp)) return makeSingleNoteBoard(harp, model, options);
  const name = `${level} ${options.valved}`;
  const ofModel = KEPT.get(model) ?? new WeakMap<Harp, Map<string, SingleNoteBoard>>();
  const ofHarp = ofModel.get(harp) ?? new Map<string, SingleNoteBoard>();
  const board = ofHarp.get(name) ?? makeSingleNoteBoard(harp, model, options);
  KEPT.set(model, ofModel.set(harp, ofHarp.set(name, board)));
  return board;
}

function isFixed(harp: Harp): boolean {
  const isFrozen = Object.isFrozen(harp) && Object.isFrozen(harp.holes);
  return isFrozen && harp.holes.every(Object.isFrozen);
}

function makeSingleNoteBoard(
  harp: Harp,
  model: EffortModel,
  options: SoundingOptions,
): SingleNoteBoard {
  const all = soundings(harp, options);
  const ofPitch: number[][] = [];
  for (const [index, { pitch }] of all.entries())
    ofPitch[pitch] = [...(ofPitch[pitch] ?? []), index];
  const board = makeBoard(
    all.map((sounding) => makeChoice([sounding])),
    figuresOf(model),
  );
  return { board, ofPitch };
}
