import { type Chart, requireChart } from '@reedplate/form';
import type { PiecePart, Sheet } from '@reedplate/interchange';
import { type Line, requireLine } from '@reedplate/line';
import { requireShape, requireShapes } from '@reedplate/pitch';

const BACKING = { what: 'a backing, as makeBacking gives it', code: 'CHART_INVALID' } as const;

/** Felt beats a minute where a chart has none: as `writeMidi` plays it. */
export const USUAL_TEMPO = 96;

/** A sheet with a chart and parts. */
export interface Backing {
  readonly line: Line;
  readonly chart: Chart;
  readonly parts: readonly PiecePart[];
}

/**
 * The sheet itself, if it is a backing.
 *
 * @throws ReedplateError `CHART_INVALID`, `LINE_INVALID`
 */
export function requireBacking(backing: Sheet): Backing {
  const { line, chart, parts = [] } = requireShape(backing, { chart: 'object' }, BACKING);
  requireShapes(parts, { name: 'text', line: 'object' }, BACKING);
  for (const part of parts) requireLine(part.line);
  const song = requireChart(chart as Chart);
  return { line: requireLine(line), chart: song, parts };
}
