import type { WarningList } from '../warning.js';
import type { WrittenNotation } from './assemble-piece.js';
import { jumpOrder } from './jump-order.js';
import type { Measure } from './measure.js';
import { partOrder } from './part-order.js';
import { planJumps } from './plan-jumps.js';
import { playOrder } from './play-order.js';

/** The measures of a part in the order they are played, as indexes. */
export type OrderOf = (measures: readonly Measure[]) => readonly number[];

/** Each measure once. */
export const asWritten: OrderOf = (measures) => [...measures.keys()];

/**
 * How the parts of a score are played: in the order of its labels, by its jumps, or with its repeats
 * alone, as a warning says where labels or jumps are not clear. All parts go the same way, and the
 * first that has signs to jump by leads.
 */
export function planOrder(
  { parts, partOrder: labels }: Pick<WrittenNotation, 'parts' | 'partOrder'>,
  warnings: WarningList,
): OrderOf {
  const leader = parts.find(({ measures }) => measures.some(({ jumps }) => jumps !== undefined));
  const plan = leader === undefined ? 'none' : planJumps(leader.measures);
  const isEven = parts.every(({ measures }) => measures.length === parts[0]?.measures.length);
  const warn = (): OrderOf => {
    const first = leader?.measures.find(({ jumps }) => jumps !== undefined);
    warnings.add('repeat-jump', first?.where, labels?.join(''));
    return playOrder;
  };
  if (labels !== undefined) {
    const isClear = parts.every(({ measures }) => partOrder(measures, labels) !== undefined);
    if (!isClear || plan !== 'none') return warn();
    return (measures) => partOrder(measures, labels) ?? playOrder(measures);
  }
  if (plan === 'none') return playOrder;
  if (plan === 'unclear' || !isEven) return warn();
  return (measures) => jumpOrder(measures, plan);
}
