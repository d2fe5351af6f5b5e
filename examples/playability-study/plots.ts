/** A bar with its interval. */
export interface Bar {
  readonly label: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** A plot of bars in groups; a group of one bar each makes a plain one. */
export interface BarPlot {
  readonly title: string;
  /** What the values are, with their unit. */
  readonly unit: string;
  readonly groups: readonly { readonly label: string; readonly bars: readonly Bar[] }[];
}

const WIDTH = 760;
const LABEL_WIDTH = 300;
const BAR_HEIGHT = 18;
const GROUP_GAP = 12;
const TOP = 56;
const PLOT_WIDTH = WIDTH - LABEL_WIDTH - 90;

/** Fills that differ in lightness as well as in colour; every bar also has its label and value. */
const FILLS = ['#2f7d5b', '#7fb59b', '#c9dfd3', '#8a6fb0', '#c4b4dc'] as const;

/** Draws a plot as SVG text: bars from zero, a thin line for each interval, the value beside it. */
export function drawBars({ title, unit, groups }: BarPlot): string {
  const most = Math.max(...groups.flatMap(({ bars }) => bars.map(({ high }) => high)), 0);
  const scale = most === 0 ? 0 : PLOT_WIDTH / most;
  let y = TOP;
  const drawn = groups.map(({ label, bars }) => {
    const rows = bars.map((bar, at) => drawBar(bar, y + at * BAR_HEIGHT, at, scale));
    const heading = text(8, y + 13, label, 'font-weight="bold"');
    y += bars.length * BAR_HEIGHT + GROUP_GAP;
    return [heading, ...rows].join('\n');
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${y}" width="${WIDTH}" height="${y}" font-family="sans-serif" font-size="12" role="img" aria-labelledby="title desc">`,
    `<title id="title">${escapeText(title)}</title>`,
    `<desc id="desc">${escapeText(describe({ title, unit, groups }))}</desc>`,
    `<rect width="${WIDTH}" height="${y}" fill="#ffffff"/>`,
    text(8, 20, title, 'font-size="15" font-weight="bold"'),
    text(8, 40, `${unit}; the line is the 95 % interval`, 'fill="#444444"'),
    ...drawn,
    '</svg>',
    '',
  ].join('\n');
}

/** Everything that the plot shows, in words. */
function describe({ unit, groups }: BarPlot): string {
  const said = groups.map(({ label, bars }) => {
    const each = bars.map(
      (bar) => `${bar.label} ${round(bar.value)} (${round(bar.low)} to ${round(bar.high)})`,
    );
    return `${label}: ${each.join(', ')}`;
  });
  return [`Bars of ${unit}, with 95 % intervals.`, ...said].join(' ');
}

function drawBar({ label, value, low, high }: Bar, y: number, at: number, scale: number): string {
  const middle = y + BAR_HEIGHT / 2;
  const from = LABEL_WIDTH + low * scale;
  const to = LABEL_WIDTH + high * scale;
  return [
    text(LABEL_WIDTH - 8, y + 13, label, 'text-anchor="end"'),
    `<rect x="${LABEL_WIDTH}" y="${y + 2}" width="${round(value * scale)}" height="${BAR_HEIGHT - 4}" fill="${FILLS[at % FILLS.length]}" stroke="#333333" stroke-width="0.5"/>`,
    `<path d="M${round(from)} ${middle}H${round(to)}M${round(from)} ${middle - 4}v8M${round(to)} ${middle - 4}v8" stroke="#111111" fill="none"/>`,
    text(round(Math.max(to, LABEL_WIDTH + value * scale) + 8), y + 13, `${round(value)}`, ''),
  ].join('\n');
}

function text(x: number, y: number, content: string, attributes: string): string {
  return `<text x="${x}" y="${y}" ${attributes}>${escapeText(content)}</text>`;
}

const round = (value: number): number => Math.round(value * 100) / 100;

function escapeText(content: string): string {
  return content.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
