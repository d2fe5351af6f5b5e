import { type HarpLike, toHarp } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import { type OptionNames, requireInteger, requireOptions } from '@reedplate/pitch';
import { type NotPlayable, notPlayable } from './not-playable.js';
import { type LinePath, PATH_OPTIONS, type PathOptions, pathOf } from './path.js';
import { makeProblem } from './problem.js';
import { cheapestWay } from './search.js';
import { cheapestWays } from './search-many.js';
import { mildestWay, mildestWays } from './search-worst.js';
import { headOf, settingOf } from './setting.js';

/**
 * The easiest way to play a line on a harp under an effort model, exact: no other choice of
 * soundings costs less. Air is part of the search, in steps of a tenth of a second. Ties go, from
 * the last event back, to the sounding that stands first by hole (blow before draw).
 *
 * Where the line cannot be played, the answer says why and names the nearest that can be.
 *
 * @throws ReedplateError `LINE_EMPTY`, `MODEL_UNKNOWN`, `MODEL_INVALID`, `OPTION_UNKNOWN` for the
 * level or the objective, `NUMBER_RANGE` for the tempo
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { bestPath } from '@reedplate/playability';
 *
 * // G then A: from 2 draw the mouth would move a hole, from 3 blow there is only a breath change.
 * const line = makeLine([
 *   { start: 0, duration: 960, pitch: 67 },
 *   { start: 960, duration: 960, pitch: 69 },
 * ]);
 * const path = bestPath(line, 'C');
 * path.playable && path.soundings.map(([{ hole, breath }]) => `${hole} ${breath}`); // => ['3 blow', '3 draw']
 * path.playable && path.effort; // => 11.1
 * bestPath(makeLine([]), 'C'); // throws LINE_EMPTY
 * ```
 */
export function bestPath(
  line: Line,
  given: HarpLike,
  options: PathOptions = {},
): LinePath | NotPlayable {
  const setting = settingOf(requireOptions(options, PATH_OPTIONS, 'bestPath'));
  const harp = toHarp(given, options.known);
  const problem = makeProblem(line, harp, setting.model, setting);
  const search = setting.objective === 'total' ? cheapestWay : mildestWay;
  const way = search(problem);
  if (way === undefined) return notPlayable(line, harp, setting, problem);
  return pathOf(problem, way, headOf(harp, setting));
}

/** Several paths, the best first. */
export interface LinePaths {
  readonly playable: true;
  readonly paths: readonly LinePath[];
}

/** How {@link bestPaths} searches. */
export interface BestPathsOptions extends PathOptions {
  /** How many paths, 1 to 1,000; default 3. */
  readonly count?: number;
}

const BEST_PATHS_OPTIONS: OptionNames<BestPathsOptions> = { ...PATH_OPTIONS, count: true };

/**
 * The best ways to play a line, the very best first, exact; fewer where there are no more. The
 * first is the one that {@link bestPath} gives.
 *
 * @throws ReedplateError as {@link bestPath}, and `NUMBER_RANGE` for the count
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { bestPaths } from '@reedplate/playability';
 *
 * const line = makeLine([{ start: 0, duration: 960, pitch: 67 }]);
 * const found = bestPaths(line, 'C', { count: 2 });
 * found.playable && found.paths.map(({ soundings }) => soundings[0]?.[0]?.hole); // => [2, 3]
 * bestPaths(line, 'C', { count: 0 }); // throws NUMBER_RANGE
 * ```
 */
export function bestPaths(
  line: Line,
  given: HarpLike,
  options: BestPathsOptions = {},
): LinePaths | NotPlayable {
  const { count = 3, ...rest } = requireOptions(options, BEST_PATHS_OPTIONS, 'bestPaths');
  const harp = toHarp(given, rest.known);
  requireInteger(count, { min: 1, max: 1000, what: 'a number of paths' });
  const setting = settingOf(rest);
  const problem = makeProblem(line, harp, setting.model, setting);
  if (cheapestWay(problem) === undefined) return notPlayable(line, harp, setting, problem);
  const search = setting.objective === 'total' ? cheapestWays : mildestWays;
  const head = headOf(harp, setting);
  const paths = search(problem, count).map((way) => pathOf(problem, way, head));
  return Object.freeze({ playable: true, paths: Object.freeze(paths) });
}
