import { requireChart } from '@reedplate/form';
import { requireLine } from '@reedplate/line';
import { requireShape, toKey } from '@reedplate/pitch';
import type { Sheet } from './piece.js';

const SHEET = { what: 'a sheet: a line with what goes beside it', code: 'LINE_INVALID' } as const;

/**
 * The sheet itself, if it is one: what every function that writes one asks first.
 *
 * @throws ReedplateError `LINE_INVALID`, `CHART_INVALID`, `KEY_UNKNOWN`
 */
export function requireSheet<Of extends Sheet>(sheet: Of): Of {
  const { line, key, chart, parts = [] } = requireShape<Sheet>(sheet, {}, SHEET);
  requireLine(line);
  if (key !== undefined) toKey(key);
  if (chart !== undefined) requireChart(chart);
  requireShape({ parts }, { parts: 'list' }, SHEET);
  for (const [at, part] of parts.entries()) {
    const words = { what: 'a part with a name and a line', code: 'LINE_INVALID' } as const;
    const path = `parts[${at}]`;
    requireLine(requireShape(part, { name: 'text', line: 'object' }, { ...words, path }).line);
  }
  return sheet;
}
