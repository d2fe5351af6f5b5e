import { type OptionNames, ReedplateError, requireOneOf, requireOptions } from '@reedplate/pitch';
import type { StudyCellSummary, StudyFigure } from '../study-summary.js';
import { type BarPlotSpec, barPlot, type PlotRow } from './bar-plot.js';

/** Figures of a summary that are plotted. */
export const STUDY_PLOT_FIGURES = Object.freeze([
  'wholeShare',
  'effortPerEvent',
  'bendsPerHundred',
  'overbendsPerHundred',
] as const);

/** A figure of a summary; see {@link STUDY_PLOT_FIGURES}. */
export type StudyPlotFigure = (typeof STUDY_PLOT_FIGURES)[number];

/** Which cells {@link studyPlot} shows, and under what title. */
export interface StudyPlotOptions {
  /** Default all. */
  readonly tuning?: StudyCellSummary['tuning'];
  /** Default all. */
  readonly position?: StudyCellSummary['position'];
  /** Default all. */
  readonly level?: StudyCellSummary['level'];
  /** Default what is shown. */
  readonly title?: string;
}

const STUDY_PLOT_OPTIONS: OptionNames<StudyPlotOptions> = {
  tuning: true,
  position: true,
  level: true,
  title: true,
};

/** What a figure counts, with its unit. */
const FIGURE_WORDS: Readonly<Record<StudyPlotFigure, { title: string; unit: string }>> =
  Object.freeze({
    wholeShare: { title: 'Tunes that can be played whole', unit: 'share of tunes' },
    effortPerEvent: {
      title: 'Effort',
      unit: 'points an event, over the tunes that can be played whole',
    },
    bendsPerHundred: {
      title: 'Bends',
      unit: 'in a hundred events, over the tunes that can be played whole',
    },
    overbendsPerHundred: {
      title: 'Overbends',
      unit: 'in a hundred events, over the tunes that can be played whole',
    },
  });

/**
 * A figure of a study's summary as a plot: a specification of Vega-Lite 6, plain data that notebooks and
 * papers draw and restyle. A bar for each cell with its 95 % interval, a row of bars for each position.
 *
 * @param cells as `summariseStudy` gives them
 * @throws ReedplateError `STUDY_INVALID` where no cell is left to show, `OPTION_UNKNOWN` for the figure
 *   or an option that is none
 * @example
 * ```ts
 * import { makeStudySetup, studyPlot, studyTune, summariseStudy } from '@reedplate/study';
 *
 * const text = '{"key":"C","line":{"notes":[{"start":0,"duration":960,"pitch":64}]}}';
 * const found = studyTune(text, 1, makeStudySetup({ positions: [1] }));
 * const cells = summariseStudy('cells' in found ? [found] : []);
 * const spec = studyPlot(cells, 'wholeShare', { title: 'One tune' });
 * spec.title.text; // => 'One tune'
 * spec.data.values[0]?.high; // => 1
 * studyPlot([], 'wholeShare'); // throws STUDY_INVALID
 * ```
 */
export function studyPlot(
  cells: readonly StudyCellSummary[],
  figure: StudyPlotFigure,
  options: StudyPlotOptions = {},
): BarPlotSpec {
  const { title, ...which } = requireOptions(options, STUDY_PLOT_OPTIONS, 'studyPlot');
  requireOneOf(figure, STUDY_PLOT_FIGURES, { what: 'a figure of a study' });
  const shown = cells.filter((cell) => isOf(cell, which));
  const rows = shown.flatMap((cell) => rowOf(cell, figure, shown));
  if (rows.length === 0) throw nothingToShow(which);
  const words = FIGURE_WORDS[figure];
  const of = Object.values(which).map((value) => ` (${value})`);
  return barPlot({ title: title ?? `${words.title}${of.join('')}`, unit: words.unit, rows });
}

type Which = Omit<StudyPlotOptions, 'title'>;

function isOf(cell: StudyCellSummary, { tuning, position, level }: Which): boolean {
  return (
    (tuning === undefined || cell.tuning === tuning) &&
    (position === undefined || cell.position === position) &&
    (level === undefined || cell.level === level)
  );
}

/** A cell as a row, named by what tells it from the others. */
function rowOf(
  cell: StudyCellSummary,
  figure: StudyPlotFigure,
  shown: readonly StudyCellSummary[],
): readonly PlotRow[] {
  const found: StudyFigure | null = cell[figure];
  if (found === null) return [];
  const names = (['tuning', 'level'] as const).filter((name) =>
    shown.some((other) => other[name] !== cell[name]),
  );
  const { value, low, high } = found;
  const label = names.length === 0 ? cell.tuning : names.map((name) => cell[name]).join(', ');
  return [
    { group: `position ${cell.position}`, label, value, low: low ?? value, high: high ?? value },
  ];
}

function nothingToShow(which: Which): ReedplateError {
  return new ReedplateError({
    code: 'STUDY_INVALID',
    value: which,
    expected: 'cells of a summary that have this figure',
  });
}
