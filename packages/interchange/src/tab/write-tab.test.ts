import { FORMS, makeChart, parseForm } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { type Line, makeLine } from '@reedplate/line';
import { TAB_DIALECT_IDS } from '@reedplate/tab';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { lines } from '../arbitraries.fixture.js';
import { readPiece } from '../formats/read-piece.js';
import { writeTab } from './write-tab.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const harp = makeHarp('C');
const read = (text: string) => readPiece(text, { harp, format: 'tab' });

/** Lines of notes that a C harp has. */
const playable = lines({ unit: 40, chords: false }).map((line): Line => {
  const { notes, ...head } = line;
  return makeLine(
    notes.map((note) => ({ ...note, pitch: 67 + (note.pitch % 25) })),
    head,
  );
});

describe('writeTab', () => {
  test('writeTab sets four bars a row, chords over the tab that sounds with them', () => {
    const chart = makeChart(parseForm('I7 IV7 V7 | I7 | IV7 | I7 | V7'), 'G', { tempo: 96 });
    const line = makeLine(
      chart.spans.map(({ start, end, chord }) => ({
        start,
        duration: end - start,
        pitch: { G: 67, C: 72, D: 74 }[chord?.root as string] ?? 60,
      })),
      { tempo: 96 },
    );
    const text = writeTab({ line, chart, key: 'G' }, harp, {
      title: 'Roots',
      subtitle: 'C harp, 2nd position',
    });
    expect(text.split('\n').slice(0, 3)).toEqual([
      '# Roots',
      '## key G, 4/4, shuffle, 96 beats a minute, C harp, 2nd position',
      '',
    ]);
    const [chords = '', tab = ''] = text.split('\n').slice(3);
    // The three chords of the first bar stand over its three notes.
    const starts = (row: string) => [...row.matchAll(/[^\s|]+/gu)].map(({ index }) => index);
    expect(chords.slice(0, 14)).toMatch(/^G7:4\/3 C7:4\/3/u);
    expect(starts(chords)).toEqual(starts(tab));
    const bars = text
      .split('\n')
      .slice(3)
      .filter((row) => row.includes('|'));
    expect(bars.map((row) => row.match(/\|/gu)?.length)).toEqual([4, 4, 1, 1]);
    expect(text.endsWith('|\n')).toBe(true);
  });

  test('writeTab puts the bar lines of all rows one below another', () => {
    const chart = makeChart('quick-change', 'G');
    const line = makeLine(
      Array.from({ length: 30 }, (_, at) => ({ start: at * 1440, duration: 1440, pitch: 67 })),
    );
    const rows = writeTab({ line, chart }, harp)
      .split('\n')
      .filter((row) => row.includes('|'));
    const places = rows.map((row) => [...row.matchAll(/\|/gu)].map(({ index }) => index));
    expect(rows).toHaveLength(6);
    for (const each of places) expect(each).toEqual(places[0]);
  });

  test('writeTab moves later rows in by as much as a pickup takes', () => {
    const line = makeLine(
      Array.from({ length: 9 }, (_, at) => ({
        start: at === 0 ? 0 : 480 + (at - 1) * 3840,
        duration: at === 0 ? 480 : 3840,
        pitch: at % 2 === 0 ? 74 : 72,
      })),
      { pickup: 480 },
    );
    const rows = writeTab({ line }, harp)
      .split('\n')
      .filter((row) => row.includes('|'));
    expect(rows).toEqual([
      '-4:1/2 | +4:4 | -4:4 | +4:4 | -4:4 |',
      '         +4:4 | -4:4 | +4:4 | -4:4 |',
    ]);
  });

  test('writeTab of one bar without chords is a row of tab alone', () => {
    const line = makeLine([{ start: 0, duration: 960, pitch: 67 }]);
    expect(writeTab({ line }, harp)).toBe('-2\n');
  });

  test('writeTab stands a note that is held over a bar line in the bar where it begins', () => {
    const line = makeLine([
      { start: 2880, duration: 5760, pitch: 74 },
      { start: 8640, duration: 960, pitch: 72 },
    ]);
    expect(writeTab({ line }, harp)).toBe('r:3 -4:6 |  | +4 |\n');
  });

  test('readPiece gives back the line, its title, metre, pickup and tempo', () => {
    fc.assert(
      fc.property(playable, fc.constantFrom(...TAB_DIALECT_IDS), (line, dialect) => {
        const text = writeTab({ line }, harp, { dialect, level: 'overbends' });
        expect(readPiece(text, { harp, format: 'tab', dialect }).line).toEqual(line);
      }),
      { numRuns: 150 },
    );
  });

  test('readPiece gives back the chart of every form', () => {
    for (const form of FORMS) {
      const chart = makeChart(form, form.mode === 'minor' ? 'Dm' : 'D', { tempo: 90 });
      const line = makeLine([{ start: chart.pickup, duration: 480, pitch: 69 }], {
        metre: chart.metre,
        pickup: chart.pickup,
      });
      const back = read(writeTab({ line, chart, key: chart.key }, harp));
      const said = ({ spans }: typeof chart) =>
        spans.map(({ start, end, chord }) => [start, end, chord?.symbol]);
      expect(said(back.chart as typeof chart)).toEqual(said(chart));
      expect([back.key, back.chart?.feel, back.chart?.metre, back.chart?.bars]).toEqual([
        chart.key,
        chart.feel,
        chart.metre,
        chart.bars,
      ]);
    }
  });

  test('readPiece finds the chords of a line with a count-in where they were', () => {
    const chart = makeChart(parseForm('I7 | IV7'), 'G');
    const line = makeLine([{ start: 3840, duration: 3840, pitch: 67 }], { countIn: 1 });
    const back = read(writeTab({ line, chart }, harp));
    expect(back.line).toEqual(line);
    expect(back.chart?.spans.map(({ start, chord }) => [start, chord?.symbol])).toEqual([
      [0, 'G7'],
      [3840, 'C7'],
    ]);
  });

  test('writeTab keeps a title on one row, whatever it holds', () => {
    const line = makeLine([{ start: 0, duration: 960, pitch: 67 }]);
    const text = writeTab({ line }, harp, { title: '# A\n-4 | B', subtitle: 'x\n-2' });
    expect(text.split('\n').filter((row) => !row.startsWith('#'))).toEqual(['', '-2', '']);
    expect(read(text).line.notes).toHaveLength(1);
  });

  test('writeTab refuses an option that there is none of', () => {
    const line = makeLine([{ start: 0, duration: 960, pitch: 67 }]);
    expect(() => writeTab({ line }, harp, { titel: 'x' } as object)).toThrow(/title/u);
  });
});

describe('readPiece of tablature with chords', () => {
  test.each([
    ['| G7 | C7 |\n-2:4 | +4:4 |', ['G7', 'C7']],
    ['# What\nG7:2 C7:2 |\n-2:2 +4:2 |', ['G7', 'C7']],
    ['N.C. | C7 |\n-2:4 | +4:4', [undefined, 'C7']],
  ])('readPiece takes %j', (text, symbols) => {
    const { chart, line } = read(text.replace('| G7', 'G7'));
    expect(line.notes.map(({ pitch }) => pitch)).toEqual([67, 72]);
    expect(chart?.spans.map(({ chord }) => chord?.symbol)).toEqual(symbols);
  });

  test('readPiece says where a row is neither chords nor tab', () => {
    expect(() => read('G7 | what |\n-2:4')).toThrow(/line 1, column 1/u);
    expect(() => read('G7 |\n-2:4 |\n-22')).toThrow(/line 3, column 1/u);
  });

  test('readPiece passes over what a head row says that it does not know', () => {
    const { line, key } = read('# Riff\n## key H, 99/7, loud, 96 beats a minute\n-2');
    expect([line.title, line.tempo, line.metre, key]).toEqual(['Riff', 96, '4/4', undefined]);
  });
});
