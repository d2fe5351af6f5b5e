import { type Harp, makeHarp, type TechniqueLevel, type Tuning } from '@reedplate/layout';
import { type Line, readLine } from '@reedplate/line';
import { isReedplateError, type KeyName, parseKey, ReedplateError } from '@reedplate/pitch';
import { harpKeyOf, type PositionNumber } from '@reedplate/position';
import { fit as rankHarps } from './fit.js';
import type { StudySetup } from './study-setup.js';

/** A tune of a study: one line of its input. */
export interface StudyTune {
  /** Key of the tune, from which positions are counted. */
  readonly key: KeyName;
  readonly line: Line;
  /** Copied to the result. */
  readonly id?: string;
}

/** One answer about a tune: how it lies in a tuning, in a position, at a level. */
export interface StudyCell {
  readonly tuning: string;
  readonly position: PositionNumber;
  readonly level: TechniqueLevel;
  /** Key printed on the harp. */
  readonly harp: KeyName;
  /** Octaves the tune is moved: the best of those allowed. */
  readonly octave: number;
  /** Share of its moments that can be sounded, 0 to 1. */
  readonly playableShare: number;
  /** Points for each moment that can be sounded. */
  readonly effortPerMoment: number;
  /** Moments that are bends, and overbends. */
  readonly bends: number;
  readonly overbends: number;
}

/** What a study found about a tune: one line of its output. */
export interface StudyResult {
  /** Line of the input, from 1. */
  readonly number: number;
  readonly id?: string;
  readonly title?: string;
  readonly model: string;
  readonly moments: number;
  /** By tuning, then position, then level, in the order of the setup. */
  readonly cells: readonly StudyCell[];
}

/** A tune that a study could not read: also a line of its output. */
export interface StudyFailure {
  readonly number: number;
  readonly error: { readonly code: string; readonly message: string };
}

/**
 * Reads a tune of a study from a line of its input: JSON with `key`, `line` and, where wanted, `id`.
 *
 * @throws ReedplateError `JSON_MALFORMED`, `STUDY_INVALID`, `KEY_UNKNOWN`, `LINE_INVALID`, `METRE_UNKNOWN`
 * @example
 * ```ts
 * import { readStudyTune } from '@reedplate/playability';
 *
 * readStudyTune('{"key":"G","line":{"notes":[{"start":0,"duration":960,"pitch":67}]}}').key; // => 'G'
 * readStudyTune('{"key":"G"}'); // throws STUDY_INVALID
 * ```
 */
export function readStudyTune(text: string): StudyTune {
  const value = parseJson(text);
  if (typeof value !== 'object' || value === null || !('key' in value) || !('line' in value)) {
    throw new ReedplateError({
      code: 'STUDY_INVALID',
      value: text,
      expected: 'an object with key and line',
    });
  }
  const { key, line, id } = value as { key: string; line: unknown; id?: unknown };
  return Object.freeze({
    key: parseKey(key).name,
    line: readLine(line),
    ...(typeof id === 'string' ? { id } : {}),
  });
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new ReedplateError({ code: 'JSON_MALFORMED', value: text, expected: 'one JSON value' });
  }
}

/**
 * What a study finds about one line of its input. Bad input is an answer of its own, so that one
 * bad tune does not end a study; a defect of the program still does.
 *
 * @param number line of the input, from 1
 * @example
 * ```ts
 * import { makeStudySetup, studyTune } from '@reedplate/playability';
 *
 * const text = '{"key":"G","line":{"notes":[{"start":0,"duration":960,"pitch":67}]}}';
 * const found = studyTune(text, 1, makeStudySetup({ positions: [2] }));
 * 'cells' in found && found.cells[0]?.harp; // => 'C'
 * studyTune('{', 2, makeStudySetup()); // => { number: 2, error: { code: 'JSON_MALFORMED', message: '"{" is not well-formed JSON: expected one JSON value' } }
 * ```
 */
export function studyTune(
  text: string,
  number: number,
  setup: StudySetup,
): StudyResult | StudyFailure {
  try {
    return studied(readStudyTune(text), number, setup);
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    return { number, error: { code: error.code, message: error.message } };
  }
}

function studied({ key, line, id }: StudyTune, number: number, setup: StudySetup): StudyResult {
  const cells = setup.tunings.flatMap((tuning) =>
    setup.positions.flatMap((position) => {
      const harp = harpFor(key, position, tuning);
      return setup.levels.map((level) => cellOf(line, harp, position, level, setup));
    }),
  );
  return {
    number,
    ...(id === undefined ? {} : { id }),
    ...(line.title === undefined ? {} : { title: line.title }),
    model: setup.model.id,
    moments: new Set(line.notes.map(({ start }) => start)).size,
    cells,
  };
}

/** Harps by tuning and key: a study asks for the same few over and over. */
const HARPS = new WeakMap<Tuning, Map<string, Harp>>();

function harpFor(key: KeyName, position: PositionNumber, tuning: Tuning): Harp {
  const label = harpKeyOf(key, position, { tuning }).name;
  const ofTuning = HARPS.get(tuning) ?? new Map<string, Harp>();
  const harp = ofTuning.get(label) ?? makeHarp(label, { tuning });
  HARPS.set(tuning, ofTuning.set(label, harp));
  return harp;
}

function cellOf(
  line: Line,
  harp: Harp,
  position: PositionNumber,
  level: TechniqueLevel,
  { model, octaves }: StudySetup,
): StudyCell {
  const transpositions = octaves.map((octave) => octave * 12);
  const [best] = rankHarps(line, [harp], { model, level, transpositions, count: 1 }).harps;
  return {
    tuning: harp.tuning,
    position,
    level,
    harp: harp.key,
    octave: (best?.transposition ?? 0) / 12,
    playableShare: best?.playableShare ?? 0,
    effortPerMoment: best?.effortPerMoment ?? 0,
    bends: best?.bends ?? 0,
    overbends: best?.overbends ?? 0,
  };
}
