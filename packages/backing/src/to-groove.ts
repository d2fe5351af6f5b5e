import type { Chart } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';
import { nearestOf, ReedplateError, requireShape } from '@reedplate/pitch';
import type { Groove } from './groove.js';
import { GROOVES, type GrooveId } from './grooves.js';

/**
 * The groove itself, given as one or by its id; where none is given, that of the chart's feel and metre.
 *
 * @throws ReedplateError `OPTION_UNKNOWN`, `GROOVE_INVALID` for beats that the metre does not have
 */
export function toGroove(given: GrooveId | Groove | undefined, chart: Chart): Groove {
  const groove = given === undefined ? usualGroove(chart) : namedGroove(given);
  if (groove.parts === 3 && !isOfThree(chart)) {
    throw new ReedplateError({
      code: 'GROOVE_INVALID',
      value: groove.id,
      expected: `a groove for ${chart.metre}: ${groove.name} wants beats of three, as in 12/8`,
    });
  }
  return groove;
}

function namedGroove(given: GrooveId | Groove): Groove {
  if (typeof given === 'object' && given !== null) {
    return requireShape(given, { id: 'text', name: 'text', bass: 'text', fills: 'list' }, WORDS);
  }
  const found = GROOVES.find(({ id }) => id === given);
  if (found !== undefined) return found;
  const ids = GROOVES.map(({ id }) => id);
  throw new ReedplateError({
    code: 'OPTION_UNKNOWN',
    value: given,
    expected: `a groove: ${ids.join(', ')}`,
    nearest: typeof given === 'string' ? nearestOf(given, ids) : undefined,
  });
}

const WORDS = { what: 'a groove', code: 'GROOVE_INVALID' } as const;
const BEATS_OF_A_WALTZ = 3;

function usualGroove(chart: Chart): Groove {
  const { beatsPerBar } = parseMetre(chart.metre);
  if (isOfThree(chart)) return namedGroove('slow-twelve-eight');
  if (beatsPerBar === BEATS_OF_A_WALTZ) return namedGroove('waltz');
  return namedGroove(chart.feel === 'straight' ? 'straight-rock' : 'driving-shuffle');
}

/** Whether the beats of a chart divide by three, as in 12/8. */
function isOfThree({ metre }: Chart): boolean {
  return parseMetre(metre).beatTicks % 720 === 0;
}
