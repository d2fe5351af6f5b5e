import { parseMetre } from '@reedplate/line';
import { readBeats } from '@reedplate/tab';
import type { ChordMark } from '../notation/lay-measures.js';
import { isHeadRow, readTabHead, type TabHead } from './tab-head.js';

/** Tablature taken apart by rows. */
export interface TabRows {
  readonly head: TabHead;
  /** Tab alone; other rows are empty, so that places stay. */
  readonly tab: string;
  /** Rows of chords, each with the number of bars before it. */
  readonly chords: readonly ChordRow[];
  /** Bars in all. */
  readonly bars: number;
}

interface ChordRow {
  readonly cells: readonly string[];
  readonly barsBefore: number;
}

/** Takes the rows of tablature apart: what it says of itself, chords, and tab. */
export function tabRowsOf(text: string): TabRows {
  const head: string[] = [];
  const chords: ChordRow[] = [];
  let bars = 0;
  const kept = text.split(/\r\n|\r|\n/u).map((row) => {
    if (isHeadRow(row)) {
      head.push(row);
      return '';
    }
    if (isChordRow(row)) {
      chords.push({ cells: cellsOf(row), barsBefore: bars });
      return '';
    }
    if (row.includes('|')) bars += cellsOf(row).length;
    return row;
  });
  return { head: readTabHead(head), tab: kept.join('\n'), chords, bars };
}

/** A chord by its letters, or none, and its length. Tab begins with a figure, a sign or a bracket. */
const CHORD_WORD = /^(?:N\.C\.|[A-G][^\s|:]{0,24})(?::[\d./]{1,15})?$/u;

function isChordRow(row: string): boolean {
  if (!row.includes('|')) return false;
  const words = row.split(/[\s|]+/u).filter((word) => word !== '');
  return words.length > 0 && words.every((word) => CHORD_WORD.test(word));
}

/** What stands between bar lines; the line at the end of a row closes a bar. */
function cellsOf(row: string): readonly string[] {
  const cells = row.split('|').map((cell) => cell.trim());
  return cells.at(-1) === '' ? cells.slice(0, -1) : cells;
}

/** The chords in time, in ticks of a line with the head's metre and pickup. */
export function chordMarksOf(
  { chords }: Pick<TabRows, 'chords'>,
  { metre = '4/4', pickup = 0 }: Pick<TabHead, 'metre' | 'pickup'>,
): readonly ChordMark[] {
  const { barTicks, beatTicks } = parseMetre(metre);
  return chords.flatMap(({ cells, barsBefore }) =>
    cells.flatMap((cell, at) => {
      const bar = barsBefore + at;
      let start = pickup === 0 ? bar * barTicks : bar === 0 ? 0 : pickup + (bar - 1) * barTicks;
      const words = cell.split(/\s+/u).filter((word) => word !== '');
      return words.map((word) => {
        const { what, beats = 1 } = readBeats(word);
        const mark = { start, text: what };
        start += Math.round(beats * beatTicks);
        return mark;
      });
    }),
  );
}
