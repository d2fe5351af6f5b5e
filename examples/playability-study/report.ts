import type { StudyCellSummary, StudyFigure, TuningChanges } from '@reedplate/study';

const percent = (share: StudyFigure): string =>
  within(share, (value) => (100 * value).toFixed(0), ' %');
const figure = (found: StudyFigure | null): string =>
  found === null ? '-' : within(found, (value) => value.toFixed(2));

/** A figure with its interval; without one where a single tune gave it. */
function within(
  { value, low, high }: StudyFigure,
  say: (value: number) => string,
  unit = '',
): string {
  const interval = low === null || high === null ? '' : ` (${say(low)}-${say(high)})`;
  return `${say(value)}${unit}${interval}`;
}

/** The results as a table in Markdown, a row a cell. */
export function resultTable(cells: readonly StudyCellSummary[]): string {
  return [
    '| tuning | position | level | whole tunes | points an event | bends in 100 | overbends in 100 |',
    '|---|---:|---|---:|---:|---:|---:|',
    ...cells.map(
      (cell) =>
        `| ${cell.tuning} | ${cell.position} | ${cell.level} | ${percent(cell.wholeShare)} | ${figure(cell.effortPerEvent)} | ${figure(cell.bendsPerHundred)} | ${figure(cell.overbendsPerHundred)} |`,
    ),
  ].join('\n');
}

/** The best changes of a tuning as a table in Markdown. */
export function changesTable({ unchanged, changes }: TuningChanges, rows: number): string {
  return [
    '| change | points saved | of | events missing |',
    '|---|---:|---:|---:|',
    ...changes.slice(0, rows).map(({ edits, saved, missing }) => {
      const said = edits.map(
        ({ hole, breath, by }) => `${hole} ${breath} ${by > 0 ? 'up' : 'down'} ${Math.abs(by)}`,
      );
      const share = ((100 * saved) / unchanged.cost).toFixed(1);
      return `| ${said.join(', ')} | ${saved.toFixed(0)} | ${share} % | ${missing} |`;
    }),
  ].join('\n');
}
