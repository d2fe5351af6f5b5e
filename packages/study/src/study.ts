import { type Harp, makeHarp, type Tuning, toPlayer } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import { isReedplateError, itemAt, type KeyName, type ReedplateError } from '@reedplate/pitch';
import {
  candidateOn,
  countTechniques,
  DEFAULT_LINE_TEMPO,
  doSteps,
  type FitLine,
  fitLine,
  inPoints,
  lowestReed,
  rankCandidates,
  type Searched,
  type Setting,
  settingOf,
} from '@reedplate/playability';
import { harpKeyOf, type PositionNumber } from '@reedplate/position';
import { studyDigest } from './study-digest.js';
import type { StudySetup } from './study-setup.js';
import { idIn, readStudyTune, type StudyTune } from './study-tune.js';

/** One answer about a tune: how it lies in a tuning, in a position, at a level. */
export interface StudyCell {
  readonly tuning: string;
  readonly position: PositionNumber;
  /** Id of the level or the player. */
  readonly level: string;
  /** Key printed on the harp. */
  readonly harp: KeyName;
  /** Octaves the tune is moved: the best of those allowed. */
  readonly octave: number;
  /** Share of its events that can be sounded, 0 to 1. */
  readonly playableShare: number;
  /** Points for each event that can be sounded. */
  readonly effortPerEvent: number;
  /** Events that are bends, and overbends. */
  readonly bends: number;
  readonly overbends: number;
}

/** Where the tempo of a result came from: its tune, the setup, or the default of lines that say none. */
export type StudyTempoSource = 'tune' | 'setup' | 'default';

/** The tempo that a tune was studied at. */
export interface StudyTempo {
  /** Felt beats a minute; where the tune's tempo changes, that of its beginning. */
  readonly beats: number;
  readonly from: StudyTempoSource;
}

/** What a study found about a tune: one line of its output. */
export interface StudyResult {
  /** Which tune of the input it is, from 1; blank lines are not counted. */
  readonly number: number;
  readonly id?: string | number;
  readonly title?: string;
  /** That of the tune, where it names one. */
  readonly family?: string;
  /** Digest of the setup, see `studyDigest`. */
  readonly digest: string;
  readonly model: string;
  readonly tempo: StudyTempo;
  readonly events: number;
  /** By tuning, then position, then level, in the order of the setup. */
  readonly cells: readonly StudyCell[];
}

/** A tune that a study could not read: also a line of its output. */
export interface StudyFailure {
  readonly number: number;
  /** That of the tune where it can be read, or the name of a file. */
  readonly id?: string | number;
  readonly digest: string;
  readonly error: { readonly code: string; readonly message: string };
}

/**
 * What a study finds about one line of its input. Bad input is an answer of its own, so that one
 * bad tune does not end a study; a defect of the program still does.
 *
 * @param number which tune of the input it is, from 1
 * @example
 * ```ts
 * import { makeStudySetup, studyTune } from '@reedplate/study';
 *
 * const text = '{"key":"G","line":{"notes":[{"start":0,"duration":960,"pitch":67}]}}';
 * const found = studyTune(text, 1, makeStudySetup({ positions: [2] }));
 * 'cells' in found && found.cells[0]?.harp; // => 'C'
 * const failed = studyTune('{', 2, makeStudySetup());
 * 'error' in failed && failed.error; // => { code: 'JSON_MALFORMED', message: '"{" is not well-formed JSON: expected one JSON value' }
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
    return failureOf(error, { number, id: idIn(text), digest: studyDigest(setup) });
  }
}

/** What a study says of a tune that could not be read. */
export function failureOf(
  { code, message }: ReedplateError,
  {
    number,
    id,
    digest,
  }: Pick<StudyFailure, 'number' | 'digest'> & {
    readonly id?: string | number | undefined;
  },
): StudyFailure {
  return { number, ...(id === undefined ? {} : { id }), digest, error: { code, message } };
}

/** The tempo of a tune in a study, and where it came from. */
function tempoOf({ tempo: own }: Line, { tempo }: StudySetup): StudyTempo {
  if (tempo !== undefined) return { beats: tempo, from: 'setup' };
  return own === undefined
    ? { beats: DEFAULT_LINE_TEMPO, from: 'default' }
    : { beats: own, from: 'tune' };
}

function studied(
  { key, line, id, family }: StudyTune,
  number: number,
  setup: StudySetup,
): StudyResult {
  const tempo = tempoOf(line, setup);
  const prepared = fitLine(line, tempo.beats);
  const settings = setup.levels.map((level) => settingOf({ model: setup.model, level }));
  const cells = setup.tunings.flatMap((tuning) =>
    setup.positions.flatMap((position) => {
      const asked = { position, harps: harpsFor(key, position, tuning) };
      return settings.map((setting) => cellOf(prepared, asked, setting, setup));
    }),
  );
  return {
    number,
    ...(id === undefined ? {} : { id }),
    ...(line.title === undefined ? {} : { title: line.title }),
    ...(family === undefined ? {} : { family }),
    digest: studyDigest(setup),
    model: setup.model.id,
    tempo,
    events: prepared.times.count,
    cells,
  };
}

/** The harp that a cell asks about, and the one of the tuning's own label, which all keys share. */
interface CellHarps {
  readonly harp: Harp;
  readonly shared: Harp;
}

/**
 * Harps by tuning and key, so that what playability keeps for a harp is found again. Measured:
 * studying 40 tunes in 24 ways takes 0.1 s of processor time, 0.55 s without.
 */
const HARPS = new WeakMap<Tuning, Map<KeyName, Harp>>();

function harpsFor(key: KeyName, position: PositionNumber, tuning: Tuning): CellHarps {
  const label = harpKeyOf(key, position, { tuning }).name;
  return { harp: keptHarp(label, tuning), shared: keptHarp(tuning.label, tuning) };
}

function keptHarp(label: KeyName, tuning: Tuning): Harp {
  const ofTuning = HARPS.get(tuning) ?? new Map<KeyName, Harp>();
  const harp = ofTuning.get(label) ?? makeHarp(label, { tuning });
  HARPS.set(tuning, ofTuning.set(label, harp));
  return harp;
}

/** Moving line and harp together changes no effort, so one harp of a tuning answers for all keys. */
function cellOf(
  line: FitLine,
  { position, harps }: { readonly position: PositionNumber; readonly harps: CellHarps },
  setting: Setting,
  { octaves }: StudySetup,
): StudyCell {
  const { harp, shared } = harps;
  const away = lowestReed(shared) - lowestReed(harp);
  const candidates = octaves.map((octave, at) =>
    candidateOn(line, shared, octave * 12 + away, setting, at),
  );
  const [found] = doSteps(rankCandidates(line, candidates, 1)).best;
  const { candidate, way, problem } = found as Searched;
  const events = line.times.count;
  const played = events - candidate.missing;
  return {
    tuning: harp.tuning,
    position,
    level: toPlayer(setting.level).id,
    harp: harp.key,
    octave: itemAt(octaves, candidate.order),
    playableShare: played / events,
    effortPerEvent: played === 0 ? 0 : inPoints(way.cost) / played,
    ...countTechniques(problem, way),
  };
}
