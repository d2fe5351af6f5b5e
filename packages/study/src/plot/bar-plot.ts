import { deepFreeze } from '@reedplate/pitch';

/** A bar and its interval. */
export interface PlotRow {
  /** What the bar stands among. */
  readonly group: string;
  readonly label: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** What a plot of bars shows. */
export interface BarPlot {
  readonly title: string;
  /** What the values are, with their unit. */
  readonly unit: string;
  readonly rows: readonly PlotRow[];
}

/** A field of the data along an axis. */
interface Channel {
  readonly field: string;
  readonly type?: 'quantitative' | 'nominal';
  readonly title?: string | null;
  readonly sort?: null | readonly string[];
  readonly format?: string;
  readonly axis?: { readonly labelLimit: number };
  readonly scale?: { readonly zero: boolean };
}

/** A mark and where its parts lie. */
interface Layer {
  readonly mark: Readonly<Record<string, string | number | boolean>>;
  readonly encoding: Readonly<Record<string, Channel>>;
}

/** Bars with intervals as a specification of Vega-Lite 6: as much of its language as is used here. */
export interface BarPlotSpec {
  readonly $schema: string;
  readonly title: { readonly text: string; readonly subtitle: string };
  /** What the plot shows, in words. */
  readonly description: string;
  readonly data: { readonly values: readonly PlotRow[] };
  readonly facet: { readonly row: Channel };
  readonly spec: {
    readonly width: number;
    readonly height: { readonly step: number };
    readonly layer: readonly Layer[];
  };
}

const SCHEMA = 'https://vega.github.io/schema/vega-lite/v6.json';

/** Light enough for the interval to stand out; the outline of a bar stands out from the paper. */
const FILL = '#7fb59b';
const INK = '#111111';

/** Bars from zero, a line for each interval, the value beside it. */
export function barPlot({ title, unit, rows }: BarPlot): BarPlotSpec {
  const y: Channel = {
    field: 'label',
    type: 'nominal',
    sort: null,
    title: null,
    axis: { labelLimit: 300 },
  };
  const along = (field: string): Channel => ({
    field,
    type: 'quantitative',
    title: unit,
    scale: { zero: true },
  });
  return deepFreeze({
    $schema: SCHEMA,
    title: { text: title, subtitle: `${unit}; the line is the 95 % interval` },
    description: describe(unit, rows),
    data: { values: rows },
    // Vega-Lite would sort position 12 before position 2.
    facet: {
      row: {
        field: 'group',
        type: 'nominal',
        title: null,
        sort: [...new Set(rows.map(({ group }) => group))],
      },
    },
    spec: {
      width: 420,
      height: { step: 20 },
      layer: [
        {
          mark: { type: 'bar', color: FILL, stroke: INK, strokeWidth: 0.5 },
          encoding: { x: along('value'), y },
        },
        {
          mark: { type: 'errorbar', ticks: true, color: INK },
          encoding: { x: along('low'), x2: { field: 'high' }, y },
        },
        {
          mark: { type: 'text', align: 'left', dx: 6, color: INK },
          encoding: {
            x: along('high'),
            y,
            text: { field: 'value', type: 'quantitative', format: '.2f' },
          },
        },
      ],
    },
  });
}

/** Everything that the plot shows. */
function describe(unit: string, rows: readonly PlotRow[]): string {
  const groups = [...new Set(rows.map(({ group }) => group))].map((group) => {
    const bars = rows
      .filter((row) => row.group === group)
      .map(
        ({ label, value, low, high }) =>
          `${label} ${round(value)} (${round(low)} to ${round(high)})`,
      );
    return `${group}: ${bars.join(', ')}`;
  });
  return `Bars of ${unit}, with 95 % intervals. ${groups.join('. ')}.`;
}

const round = (value: number): number => Math.round(value * 100) / 100;
