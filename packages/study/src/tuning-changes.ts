import {
  editTuning,
  formatReedEdit,
  type Harp,
  makeHarp,
  type ReedEdit,
  type Tuning,
  toPlayer,
  toTuning,
} from '@reedplate/layout';
import { type Line, requireLine } from '@reedplate/line';
import {
  itemAt,
  type OptionNames,
  ReedplateError,
  requireInteger,
  requireOptions,
  requirePositive,
  requireShape,
} from '@reedplate/pitch';
import type { PathOptions } from '@reedplate/playability';
import {
  candidatesFor,
  doSteps,
  doStepsInTurn,
  type FitLine,
  fitLine,
  inPoints,
  POINT,
  type Setting,
  type Steps,
  searchCandidate,
  settingOf,
} from '@reedplate/playability';
import { editsOf } from './edits-of.js';

/** What a tuning costs over a corpus. */
export interface CorpusCost {
  /** Effort of all that can be played, and the price of all that cannot, in points. */
  readonly cost: number;
  readonly effort: number;
  /** Events that cannot be sounded. */
  readonly missing: number;
}

/** A changed tuning, with what it saves. */
export interface TuningChange extends CorpusCost {
  /** One or two reeds raised or lowered. */
  readonly edits: readonly ReedEdit[];
  /** The same in text, as `editTuning` reads it, two apart by commas: `5 draw up 1`. */
  readonly name: string;
  /** Points less than the tuning unchanged; below 0 where the change makes things worse. */
  readonly saved: number;
}

/** Every change of a tuning, ranked over a corpus. */
export interface TuningChanges {
  /** Id of the tuning that is changed. */
  readonly tuning: string;
  readonly model: string;
  /** Id of the level or the player. */
  readonly level: string;
  /** Lines of the corpus. */
  readonly lines: number;
  /** The tuning as it is. */
  readonly unchanged: CorpusCost;
  /** The change that costs least first; equals in order of reeds, hole 1 blow first. */
  readonly changes: readonly TuningChange[];
}

/** How {@link tuningChanges} looks. */
export interface TuningChangesOptions extends Omit<PathOptions, 'objective'> {
  /** How many reeds are changed at once: 1, or 2 for pairs as well; default 1. */
  readonly reeds?: 1 | 2;
  /** Semitones a reed may be raised or lowered, 1 to 12; default 2. */
  readonly within?: number;
  /** Semitones a line may be moved, the best for each; default 0 alone. */
  readonly transpositions?: readonly number[];
  /** Points that an event costs which cannot be sounded, above 0; an assumption; default 50. */
  readonly missingCost?: number;
}

const CHANGES_OPTIONS: OptionNames<TuningChangesOptions> = {
  model: true,
  level: true,
  valved: true,
  tempo: true,
  known: true,
  reeds: true,
  within: true,
  transpositions: true,
  missingCost: true,
};

/**
 * What every change of one reed, or of two, would do to the effort of a corpus: the full ranking,
 * exact for each. Lines are played on the harp that carries the tuning's label, in the standard
 * register, moved by the transposition that costs least for each line and each tuning.
 *
 * @param lines the corpus: at least one line
 * @param tuning a tuning, or the id of one in the catalogue
 * @throws ReedplateError `LINE_EMPTY` with `where.index` for a line without notes or no line at all,
 * `TUNING_UNKNOWN`, `NUMBER_RANGE`, `TUNING_INVALID` for a reed moved out of range, as `bestPath`
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { tuningChanges } from '@reedplate/study';
 *
 * // E, F sharp, G: the harp has no F sharp between 5 blow and 6 blow.
 * const line = makeLine([76, 78, 79].map((pitch, at) => ({ start: at * 960, duration: 960, pitch })));
 * const { changes } = tuningChanges([line], 'standard', { level: 'bends' });
 * changes[0]?.edits; // => [{ hole: 5, breath: 'draw', by: 1 }]
 * tuningChanges([], 'standard'); // throws LINE_EMPTY
 * ```
 */
export function tuningChanges(
  lines: readonly Line[],
  tuning: string | Tuning,
  options: TuningChangesOptions = {},
): TuningChanges {
  return doSteps(
    changeSteps(lines, tuning, requireOptions(options, CHANGES_OPTIONS, 'tuningChanges')),
  );
}

/** How {@link tuningChangesAsync} goes about it. */
export interface TuningChangesAsyncOptions extends TuningChangesOptions {
  /** Ends the call when it is aborted. */
  readonly signal?: AbortSignal;
}

const ASYNC_OPTIONS: OptionNames<TuningChangesAsyncOptions> = { ...CHANGES_OPTIONS, signal: true };

/**
 * What {@link tuningChanges} gives, worked out in stretches of some milliseconds with other work in between,
 * so that a signal ends it between one line of the corpus and the next.
 *
 * @throws ReedplateError as {@link tuningChanges}; the reason of the signal where it is aborted
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { tuningChangesAsync } from '@reedplate/study';
 *
 * const line = makeLine([{ start: 0, duration: 960, pitch: 78 }]);
 * const signal = AbortSignal.timeout(2000);
 * const { changes } = await tuningChangesAsync([line], 'standard', { level: 'natural', signal });
 * changes[0]?.name; // => '5 blow up 2'
 * ```
 */
export async function tuningChangesAsync(
  lines: readonly Line[],
  tuning: string | Tuning,
  options: TuningChangesAsyncOptions = {},
): Promise<TuningChanges> {
  const { signal, ...rest } = requireOptions(options, ASYNC_OPTIONS, 'tuningChangesAsync');
  return doStepsInTurn(changeSteps(lines, tuning, rest), signal);
}

function* changeSteps(
  lines: readonly Line[],
  tuning: string | Tuning,
  { reeds = 1, within = 2, transpositions = [0], missingCost = 50, ...rest }: TuningChangesOptions,
): Steps<TuningChanges> {
  requireInteger(reeds, { min: 1, max: 2, what: 'a number of reeds' });
  requireInteger(within, { min: 1, max: 12, what: 'semitones' });
  requirePositive(missingCost, { max: 1e6, what: 'points' });
  const from = toTuning(tuning, rest.known);
  const corpus = readCorpus(lines, rest.tempo);
  const setting = settingOf(rest);
  const costOf = (changed: Tuning): Steps<CorpusCost> =>
    corpusCost(
      corpus,
      makeHarp(changed.label, { tuning: changed }),
      transpositions,
      setting,
      missingCost,
    );
  const unchanged = yield* costOf(from);
  const changes: TuningChange[] = [];
  for (const edits of editsOf(from, within, reeds)) {
    const cost = yield* costOf(editTuning(from, edits, { id: 'changed' }));
    changes.push(
      Object.freeze({
        edits: Object.freeze(edits),
        name: edits.map((edit) => formatReedEdit(edit)).join(', '),
        ...cost,
        saved: lessBy(unchanged, cost),
      }),
    );
  }
  return Object.freeze({
    tuning: from.id,
    model: setting.model.id,
    level: toPlayer(setting.level).id,
    lines: lines.length,
    unchanged,
    changes: Object.freeze(changes.sort((a, b) => a.cost - b.cost)),
  });
}

const lessBy = (a: CorpusCost, b: CorpusCost): number =>
  Math.round((a.cost - b.cost) * POINT) / POINT;

function readCorpus(lines: readonly Line[], tempo: number | undefined): readonly FitLine[] {
  const words = { what: 'a list of lines', code: 'LINE_INVALID' } as const;
  requireShape({ lines }, { lines: 'list' }, words);
  for (const line of lines) requireLine(line);
  const empty = lines.length === 0 ? 0 : lines.findIndex(({ notes }) => notes.length === 0);
  if (empty >= 0) {
    throw new ReedplateError({
      code: 'LINE_EMPTY',
      value: lines[empty] ?? lines,
      expected: 'a corpus of one line or more, each with a note',
      where: { index: empty },
    });
  }
  return lines.map((line) => fitLine(line, tempo));
}

/** A step is one line of the corpus. */
function* corpusCost(
  corpus: readonly FitLine[],
  harp: Harp,
  transpositions: readonly number[],
  setting: Setting,
  missingCost: number,
): Steps<CorpusCost> {
  let effort = 0;
  let missing = 0;
  for (const line of corpus) {
    const candidates = yield* candidatesFor(line, [harp], transpositions, setting);
    const ways = candidates
      .map((candidate) => {
        const { way } = searchCandidate(line, candidate);
        return { effort: way.cost, missing: candidate.missing };
      })
      .sort((a, b) => a.effort - b.effort + missingCost * POINT * (a.missing - b.missing));
    const best = itemAt(ways, 0);
    effort += best.effort;
    missing += best.missing;
    yield;
  }
  const cost = inPoints(effort + missingCost * POINT * missing);
  return Object.freeze({ cost, effort: inPoints(effort), missing });
}
