import { type HarpLike, toHarp } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import { type OptionNames, requireOptions, requirePositive } from '@reedplate/pitch';
import { inPoints } from './figures.js';
import { makeEffortModel } from './make-effort-model.js';
import { type NotPlayable, notPlayable } from './not-playable.js';
import { PATH_OPTIONS, type PathOptions } from './path.js';
import { makeProblem } from './problem.js';
import { cheapestWay } from './search.js';
import { settingOf } from './setting.js';
import type { Way } from './way.js';
import { EFFORT_WEIGHT_IDS, type EffortWeightId } from './weights.js';

/** How a result hangs on one weight. */
export interface EffortWeightEffect {
  readonly weight: EffortWeightId;
  /** Least effort with the weight divided and multiplied by the factor, in points. */
  readonly effortBelow: number;
  readonly effortAbove: number;
  /** Whether another path becomes the best with the weight divided or multiplied. */
  readonly changesPath: boolean;
}

/** How a result hangs on the weights of its model. */
export interface EffortSensitivity {
  readonly playable: true;
  /** Least effort with the weights as they are, in points. */
  readonly effort: number;
  /** By how far the effort moves, the farthest first; then in the order of the weights. */
  readonly weights: readonly EffortWeightEffect[];
}

/** How {@link effortSensitivity} varies the weights. */
export interface EffortSensitivityOptions extends Omit<PathOptions, 'objective'> {
  /** Each weight is divided and multiplied by this, above 1 and at most 10; default 1.5. */
  readonly factor?: number;
}

const { objective: _, ...SETTING_OPTIONS } = PATH_OPTIONS;
const SENSITIVITY_OPTIONS: OptionNames<EffortSensitivityOptions> = {
  ...SETTING_OPTIONS,
  factor: true,
};

/**
 * How the least effort and the best path of a line hang on each weight: what they would be were
 * the weight smaller or larger and all others as they are. A result that no weight turns over
 * stands on the order of difficulty alone.
 *
 * @throws ReedplateError as `bestPath`, and `NUMBER_RANGE` for the factor
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { effortSensitivity } from '@reedplate/playability';
 *
 * const line = makeLine([{ start: 0, duration: 960, pitch: 73 }]);
 * const found = effortSensitivity(line, 'C', { factor: 2 });
 * if (!found.playable) throw new Error('not playable');
 * found.weights[0]; // => { weight: 'bend', effortBelow: 4.7, effortAbove: 10.7, changesPath: false }
 * effortSensitivity(line, 'C', { factor: 20 }); // throws NUMBER_RANGE
 * ```
 */
export function effortSensitivity(
  line: Line,
  given: HarpLike,
  options: EffortSensitivityOptions = {},
): EffortSensitivity | NotPlayable {
  const { factor = 1.5, ...rest } = requireOptions(
    options,
    SENSITIVITY_OPTIONS,
    'effortSensitivity',
  );
  const harp = toHarp(given, rest.known);
  requirePositive(factor - 1, { max: 9, what: 'a factor less 1' });
  const setting = settingOf(rest);
  const problem = makeProblem(line, harp, setting.model, setting);
  const base = cheapestWay(problem);
  if (base === undefined) return notPlayable(line, harp, setting, problem);
  const withWeight = (weight: EffortWeightId, by: number): Way => {
    const { weights } = setting.model;
    const figure = limit(weight, weights[weight] * by, weights);
    const model = makeEffortModel(setting.model, { weights: { [weight]: figure } });
    // What can be sounded does not hang on the weights, so there is a way as before.
    return cheapestWay(makeProblem(line, harp, model, setting)) as Way;
  };
  const effects = EFFORT_WEIGHT_IDS.map((weight): EffortWeightEffect => {
    const [below, above] = [withWeight(weight, 1 / factor), withWeight(weight, factor)];
    return Object.freeze({
      weight,
      effortBelow: inPoints(below.cost),
      effortAbove: inPoints(above.cost),
      changesPath: !isSame(below, base) || !isSame(above, base),
    });
  });
  const reach = ({ effortBelow, effortAbove }: EffortWeightEffect) =>
    Math.abs(effortAbove - effortBelow);
  return Object.freeze({
    playable: true,
    effort: inPoints(base.cost),
    weights: Object.freeze(effects.sort((a, b) => reach(b) - reach(a))),
  });
}

/** Keeps comfort below capacity and both within what a model may hold. */
function limit(
  weight: EffortWeightId,
  figure: number,
  { comfort, capacity }: { readonly comfort: number; readonly capacity: number },
): number {
  if (weight === 'comfort') return Math.min(figure, capacity);
  if (weight === 'capacity') return Math.max(comfort, Math.min(figure, 60));
  return Math.min(figure, 1000);
}

const isSame = (a: Way, b: Way): boolean =>
  a.choices.every((choice, at) => choice === b.choices[at]);
