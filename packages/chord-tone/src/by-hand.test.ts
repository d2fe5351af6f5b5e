import { readFileSync } from 'node:fs';
import { formById, makeChart } from '@reedplate/form';
import { makeLine, tickAt } from '@reedplate/line';
import { midi } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import { scoreLine } from './score/score-line.js';

const page = readFileSync(new URL('../../../docs/scoring-by-hand.md', import.meta.url), 'utf8');
const chart = makeChart(formById('basic'), { key: 'G' });
const BEAT = 960;

interface Row {
  readonly place: string;
  readonly note: string;
  readonly beats: number;
  readonly judged: readonly [string, string, number, number];
}

/** Cells of the rows of tables whose first cell matches. */
function rowsOf(section: string, first: RegExp): readonly (readonly string[])[] {
  return section
    .split('\n')
    .filter((row) => row.startsWith('|'))
    .map((row) =>
      row
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    )
    .filter(([cell = '']) => first.test(cell));
}

function readRow([
  place = '',
  note = '',
  beats,
  chord = '',
  kind = '',
  credit,
  weight,
]: readonly string[]): Row {
  return {
    place,
    note,
    beats: Number(beats),
    judged: [chord, kind, Number(credit), Number(weight)],
  };
}

/** A held row prolongs the note before it. */
function lineOf(rows: readonly Row[]): ReturnType<typeof makeLine> {
  const struck = rows.filter(({ note }) => note !== 'held');
  return makeLine(
    struck.map((row) => {
      const after = rows[rows.indexOf(row) + 1];
      const held = after?.note === 'held' ? after.beats : 0;
      const [bar = 1, beat = 1] = row.place.split(':').map(Number);
      return {
        start: tickAt({ bar, beat }, { metre: '4/4', pickup: 0 }),
        duration: (row.beats + held) * BEAT,
        pitch: midi(row.note),
      };
    }),
  );
}

const sections = page.split(/^## /mu).slice(1);

describe('scoreLine against docs/scoring-by-hand.md', () => {
  it('scoreLine has three choruses to be compared with', () => {
    expect(sections.length).toBe(3);
  });

  it.each(sections.map((section) => [section.split('\n')[0] ?? '', section]))(
    'scoreLine judges "%s" as worked by hand, note by note and in sum',
    (_, section) => {
      const rows = rowsOf(section, /^\d+:/u).map(readRow);
      const score = scoreLine(lineOf(rows), chart);
      expect(score.notes.map((note) => [note.chord, note.class, note.credit, note.weight])).toEqual(
        rows.map(({ judged }) => judged),
      );
      const [sums = []] = rowsOf(section, /^[01]\.\d{3}$/u);
      const { fit, landing, coverage } = score.measures;
      expect([fit, landing, coverage].map((value) => value?.toFixed(3))).toEqual(sums.slice(0, 3));
      expect(score.total.toFixed(0)).toBe(sums[3]);
    },
  );
});
