import type { StudyCell, StudyResult } from './study.js';

/** Figures of a study that can be compared, a number a tune. */
export const COMPARED_FIGURES = Object.freeze([
  'effortPerEvent',
  'wholeShare',
  'bendsPerHundred',
  'overbendsPerHundred',
] as const);

/** A figure that can be compared. */
export type ComparedFigure = (typeof COMPARED_FIGURES)[number];

/** The figure of a tune in a cell; undefined where it has none. */
export function figureOf(
  figure: ComparedFigure,
  cell: StudyCell,
  { events }: StudyResult,
): number | undefined {
  const isWhole = cell.playableShare === 1;
  if (figure === 'wholeShare') return isWhole ? 1 : 0;
  if (!isWhole) return undefined;
  if (figure === 'effortPerEvent') return cell.effortPerEvent;
  return (100 * (figure === 'bendsPerHundred' ? cell.bends : cell.overbends)) / events;
}
