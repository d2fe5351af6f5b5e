import type { Chart } from '@reedplate/form';
import type { Harp, PlayerLike } from '@reedplate/layout';
import { type Frame, SMALLEST_TEXT, tooNarrow } from '../svg/frame.js';
import { sizeToFit } from '../text/text-width.js';
import { withSigns } from '../text/with-signs.js';
import { type GridSection, sectionsOf, shareOfBar } from './grid-bars.js';
import { rootHoles } from './root-holes.js';

/** For whom a chart is drawn: for a band, names large; for a student, numerals large and holes. */
export type ChartReader = 'student' | 'band';

/** A chord of a bar, ready to be drawn. */
export interface ChartChord {
  readonly numeral: string | null;
  readonly numeralText: string;
  readonly nameText: string;
  readonly holesText: string;
  /** Share of the bar at which it begins. */
  readonly share: number;
}

/** What a bar shows. */
export interface ChartCell {
  readonly number: number;
  readonly chords: readonly ChartChord[];
  /** Drawn as a sign of repetition and not by name. */
  readonly isSame: boolean;
}

/** A section with its cells. */
export interface ChartSection extends Pick<GridSection, 'name' | 'times' | 'turnaround'> {
  readonly cells: readonly ChartCell[];
  /** Index of the bar that sounds; undefined where it is none of these. */
  readonly sounding: number | undefined;
}

/** What a chart shows, before it is laid out. */
export interface ChartContent {
  readonly sections: readonly ChartSection[];
  readonly hasHoles: boolean;
}

/** What a chart is made for. */
export interface ChartFor {
  readonly reader: ChartReader;
  readonly harp: Harp | undefined;
  readonly level: PlayerLike;
  /** Bar of the chart that sounds, from 1; none where undefined. */
  readonly sounding: number | undefined;
}

/** Gathers what the bars of a chart show. */
export function contentOf(chart: Chart, { reader, harp, level, sounding }: ChartFor): ChartContent {
  const sections = sectionsOf(chart).map(({ bars, first, ...section }) => ({
    ...section,
    sounding: indexOfBar(sounding, { first, length: bars.length, times: section.times }),
    cells: bars.map(({ number, spans, repeatsLast }) => ({
      number,
      isSame: reader === 'band' && repeatsLast,
      chords: spans.map((span) => ({
        numeral: span.numeral,
        numeralText: span.numeral === null ? '' : withSigns(span.numeral),
        nameText: span.chord === null ? 'N.C.' : withSigns(span.chord.symbol),
        holesText:
          harp === undefined || span.chord === null
            ? ''
            : rootHoles(span.chord, harp, level).join(' '),
        share: shareOfBar(span, chart),
      })),
    })),
  }));
  return { sections, hasHoles: harp !== undefined };
}

/** Which bar of a section a bar of the chart is, the time through it left aside. */
function indexOfBar(
  bar: number | undefined,
  { first, length, times }: Readonly<Record<'first' | 'length' | 'times', number>>,
): number | undefined {
  const at = (bar ?? 0) - first;
  return at >= 0 && at < length * times ? at % length : undefined;
}

/** Sizes that a chart is drawn in. */
export interface ChartSizes {
  readonly columns: number;
  readonly cellWidth: number;
  readonly large: number;
  readonly small: number;
}

/** How large text may be, and how many bars stand in a row. */
export interface SizesWanted {
  readonly columns: number;
  readonly large: number;
  readonly small: number;
}

/** Room at each side of a chord's text. */
export const SIDE = 6;

/** What a sign of repetition takes of its bar, in widths of a line: the line and its dots. */
const REPEAT_ROOM = 8.5;

/** Lines grow with the text beside them. */
export function lineWidth(small: number): number {
  return Math.max(1.25, small / 12);
}

/** Signs of repetition within a bar. */
export type RepeatSign = 'begin' | 'end';

/** The signs of repetition that a bar of a section has. */
export function signsOf(
  { cells, times }: Pick<ChartSection, 'cells' | 'times'>,
  at: number,
): readonly RepeatSign[] {
  if (times === 1) return [];
  const ends: RepeatSign[] = at === cells.length - 1 ? ['end'] : [];
  return at === 0 ? ['begin', ...ends] : ends;
}

/** The largest text in which every chord fits its part of its bar. */
export function sizesOf(
  frame: Frame,
  content: ChartContent,
  wanted: SizesWanted,
  reader: ChartReader,
): ChartSizes {
  const { columns } = wanted;
  const cellWidth = (frame.right - frame.left) / columns;
  let { large, small } = wanted;
  for (const { chord, share, isBeside } of content.sections.flatMap(chordParts)) {
    const sides = isBeside ? 2 * REPEAT_ROOM * lineWidth(wanted.small) : SIDE * 1.5;
    const width = share * cellWidth - sides;
    const [main, second] =
      reader === 'student'
        ? [chord.numeralText || chord.nameText, chord.nameText]
        : [chord.nameText, chord.numeralText];
    large = Math.min(large, sizeToFit([main], { width, wanted: large, weight: 'bold' }));
    small = Math.min(small, sizeToFit([second, chord.holesText], { width, wanted: small }));
  }
  const least = Math.min(large, small);
  if (least < SMALLEST_TEXT && columns > 1) {
    return sizesOf(frame, content, { ...wanted, columns: columns > 2 ? 2 : 1 }, reader);
  }
  if (least >= SMALLEST_TEXT) return { columns, cellWidth, large, small };
  throw tooNarrow(frame.width, (frame.width * SMALLEST_TEXT) / least, 'a bar of this chart');
}

/** The chords of a section that are drawn, each with its share of a bar, and whether a repeat stands beside it. */
function chordParts(section: ChartSection) {
  return section.cells
    .flatMap(({ chords, isSame }, at) => {
      const signs = signsOf(section, at);
      return chords.map((chord, index) => ({
        chord,
        share: isSame ? 0 : (chords[index + 1]?.share ?? 1) - chord.share,
        isBeside:
          (signs.includes('begin') && index === 0) ||
          (signs.includes('end') && index === chords.length - 1),
      }));
    })
    .filter(({ share }) => share > 0);
}
