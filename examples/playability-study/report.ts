import type { StudyCellSummary, StudyFigure, TuningChanges } from '@reedplate/study';
import type { BarPlot } from './plots.js';

const percent = ({ value, low, high }: StudyFigure): string =>
  `${(100 * value).toFixed(0)} % (${(100 * low).toFixed(0)}-${(100 * high).toFixed(0)})`;
const figure = (interval: StudyFigure | null): string =>
  interval === null
    ? '-'
    : `${interval.value.toFixed(2)} (${interval.low.toFixed(2)}-${interval.high.toFixed(2)})`;

/** The results as a table in Markdown, a row a cell. */
export function resultTable(cells: readonly StudyCellSummary[]): string {
  return [
    '| tuning | position | level | whole tunes | points a moment | bends in 100 | overbends in 100 |',
    '|---|---:|---|---:|---:|---:|---:|',
    ...cells.map(
      (cell) =>
        `| ${cell.tuning} | ${cell.position} | ${cell.level} | ${percent(cell.wholeShare)} | ${figure(cell.effortPerMoment)} | ${figure(cell.bendsPerHundred)} | ${figure(cell.overbendsPerHundred)} |`,
    ),
  ].join('\n');
}

/** The best changes of a tuning as a table in Markdown. */
export function changesTable({ unchanged, changes }: TuningChanges, rows: number): string {
  return [
    '| change | points saved | of | moments missing |',
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

/** Effort a moment by tuning, in each position, at one level. */
export function effortPlot(cells: readonly StudyCellSummary[], level: string): BarPlot {
  const atLevel = cells.filter((cell) => cell.level === level);
  return {
    title: `Effort by tuning and position (${level})`,
    unit: 'points a moment, over the tunes that can be played whole',
    groups: groupBy(
      atLevel,
      ({ position }) => `position ${position}`,
      ({ tuning, effortPerMoment }) => {
        return effortPerMoment === null ? [] : [{ label: tuning, ...effortPerMoment }];
      },
    ),
  };
}

/** Share of tunes that can be played whole, by position and level, in one tuning. */
export function playablePlot(cells: readonly StudyCellSummary[], tuning: string): BarPlot {
  const ofTuning = cells.filter((cell) => cell.tuning === tuning);
  return {
    title: `Tunes playable whole on the ${tuning} tuning`,
    unit: 'share of tunes',
    groups: groupBy(
      ofTuning,
      ({ position }) => `position ${position}`,
      ({ level, wholeShare }) => [{ label: level, ...wholeShare }],
    ),
  };
}

function groupBy(
  cells: readonly StudyCellSummary[],
  nameOf: (cell: StudyCellSummary) => string,
  barsOf: (cell: StudyCellSummary) => readonly (StudyFigure & { readonly label: string })[],
): BarPlot['groups'] {
  const names = [...new Set(cells.map(nameOf))];
  return names.map((label) => ({
    label,
    bars: cells.filter((cell) => nameOf(cell) === label).flatMap(barsOf),
  }));
}
