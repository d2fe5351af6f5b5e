import { type Chart, makeChart, parseForm } from '@reedplate/form';
import { type Line, makeLine, type TimedNote } from '@reedplate/line';
import { isReedplateError } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyChart, anyNotes } from '../arbitraries.fixture.js';
import { BEAT, play } from './play.fixture.js';
import { scoreLine } from './score-line.js';

const chart = makeChart('basic', 'G');
const END = 12 * 4 * BEAT;

const codesOf = (line: Line, on = chart): readonly string[] =>
  scoreLine(line, on).feedback.map(({ code }) => code);

describe('scoreLine on little', () => {
  it('scoreLine judges one note, and says that it is little', () => {
    const score = scoreLine(play('G4@0'), chart);
    expect(score.measures).toMatchObject({ chordFit: 1, landing: 1, coverage: 1, clashTime: 0 });
    expect(score.played).toBeCloseTo(1 / 12, 12);
    expect(score.total).toBe(0);
    expect(codesOf(play('G4@0'))).toEqual(['BARS_NOT_PLAYED', 'LITTLE_TO_JUDGE']);
  });

  it('scoreLine judges the shortest note there is', () => {
    const [note] = scoreLine(makeLine([{ start: 0, duration: 1, pitch: 66 }]), chart).notes;
    expect(note).toMatchObject({ duration: 1, class: 'unresolved', held: false });
  });

  it('scoreLine refuses a line without notes, rests being what lies between notes', () => {
    expect(() => scoreLine(makeLine([]), chart)).toThrow(
      expect.objectContaining({ code: 'LINE_EMPTY' }),
    );
  });

  it('scoreLine leaves bars of rest without a chord fit', () => {
    const { bars } = scoreLine(play('G4@0 D5@44'), chart);
    expect(bars.filter(({ chordFit }) => chordFit !== null).map(({ bar }) => bar)).toEqual([1, 12]);
    expect(bars.filter(({ notes }) => notes === 0)).toHaveLength(10);
  });
});

describe('scoreLine on much', () => {
  /** Steps about a scale, so that every class comes up, over as many choruses as it takes. */
  function longLine(count: number): readonly [Line, Chart] {
    const scale = [62, 65, 67, 70, 71, 73, 74, 77, 78];
    const notes = Array.from({ length: count }, (_, at) => ({
      start: at * 320,
      duration: 320 - (at % 3),
      pitch: scale[(at * 5 + Math.floor(at / 7)) % scale.length] ?? 60,
    }));
    const choruses = Math.ceil((count * 320) / END);
    return [makeLine(notes), makeChart('basic', 'G', { choruses })];
  }

  it('scoreLine judges 20,000 notes, each as in a short line', () => {
    const [line, long] = longLine(20_000);
    const score = scoreLine(line, long);
    expect(score.notes.filter(({ held }) => !held)).toHaveLength(20_000);
    expect(score.bars).toHaveLength(long.bars);
    const [short] = longLine(960);
    const first = scoreLine(short, makeChart('basic', 'G', { choruses: 10 }));
    const kinds = (notes: typeof score.notes): readonly string[] =>
      notes.slice(0, 900).map((note) => `${note.name} ${note.class} ${note.metre}`);
    expect(kinds(score.notes)).toEqual(kinds(first.notes));
  });

  it('scoreLine judges 2,000 notes struck together, and lands with the best of them', () => {
    const notes = Array.from({ length: 2000 }, (_, at) => ({
      start: 0,
      duration: BEAT + at,
      pitch: at % 128,
    }));
    const score = scoreLine(makeLine(notes), chart);
    expect(score.changes[0]?.landing).toBe(1);
    expect(score.measures.resolution).toBe(0);
  });
});

describe('scoreLine on long and late notes', () => {
  it('scoreLine ends a note with the chart, however long it is held', () => {
    const held = (duration: number) =>
      scoreLine(makeLine([{ start: 0, duration, pitch: 67 }]), chart);
    expect(held(2 ** 40)).toEqual(held(END));
    expect(held(END).notes.map(({ duration }) => duration / BEAT)).toEqual([16, 8, 8, 4, 4, 4, 4]);
    expect(held(END).played).toBe(1);
  });

  it('scoreLine takes a note that begins with the next chorus for its first bar', () => {
    const whole = [0, 4, 8, 12, 16, 20, 24, 28, 32, 36, 40, 44].map((beat) => ({
      start: beat * BEAT,
      duration: 3 * BEAT,
      pitch: 67,
    }));
    const longer = makeLine([...whole, { start: END, duration: BEAT, pitch: 67 }]);
    const score = scoreLine(longer, chart);
    expect(score.bars).toHaveLength(13);
    expect(score.bars[12]).toMatchObject({ bar: 13, chords: ['G7'], chordFit: 1 });
    expect(score.alignment.choruses).toBe(2);
  });

  it('scoreLine does not let a note a whole chorus after the rest change anything', () => {
    fc.assert(
      fc.property(anyNotes, anyChart, fc.integer({ min: 0, max: 10_000 }), (line, on, after) => {
        const end = on.spans.at(-1)?.end ?? 0;
        const within = line.notes.filter(({ start }) => start < end);
        fc.pre(within.length > 0);
        const more = [...within, { start: 2 * end + after, duration: BEAT, pitch: 60 }];
        const plain = scoreLine(makeLine(within), on, { swing: 1 });
        const longer = scoreLine(makeLine(more), on, { swing: 1 });
        expect(longer.notes).toEqual(plain.notes);
        expect(longer.total).toBe(plain.total);
      }),
    );
  });

  it('scoreLine takes off a latency that moves notes before the chart', () => {
    const { notes } = scoreLine(play('G4@0 B4@1'), chart, { latency: BEAT });
    expect(notes.map(({ start, class: kind }) => [start, kind])).toEqual([[0, 'guide-tone']]);
  });
});

describe('scoreLine on overlapping notes', () => {
  it('scoreLine counts the time of each of two notes that overlap', () => {
    const both = scoreLine(play('G4@0/4 F#4@0/4'), chart).measures;
    expect(both.clashTime).toBe(0.5);
    expect(both.chordFit).toBe(0.5);
  });

  it('scoreLine counts a pitch twice where it is struck again while it sounds', () => {
    const { notes } = scoreLine(play('G4@0/4 G4@1/1'), chart);
    expect(notes.map(({ start, duration }) => [start / BEAT, duration / BEAT])).toEqual([
      [0, 4],
      [1, 1],
    ]);
  });

  it('scoreLine resolves a chord by its voices, half steps before whole, up before down', () => {
    const { notes } = scoreLine(play('F#4@0/0.5 C5@0/0.5 G4@0.5 B4@0.5 D5@0.5'), chart);
    expect(notes.slice(0, 2).map(({ name, resolvesTo }) => [name, resolvesTo])).toEqual([
      ['F#4', 2],
      ['C5', 3],
    ]);
    const [blue] = scoreLine(play('Bb4@0/0.5 B4@0.5 A4@0.5'), chart).notes;
    expect(blue?.resolvesTo).toBe(2);
  });
});

describe('scoreLine on charts of few chords', () => {
  it.each(['| I7 |', '| I7 | % | % | % |', '| i |', '| I |'])(
    'scoreLine judges the chart %s, which has one change',
    (bars) => {
      const one = makeChart(parseForm(bars), 'G', { choruses: 2 });
      const score = scoreLine(play('G4@0 D5@1 G4@2'), one);
      // One at the beginning of each chorus.
      expect(score.changes).toHaveLength(2);
      expect(score.measures).toMatchObject({ chordFit: 1, landing: 1 });
    },
  );

  it('scoreLine refuses a chart of breaks', () => {
    const rests = { ...chart, spans: chart.spans.map((span) => ({ ...span, chord: null })) };
    expect(() => scoreLine(play('G4@0'), rests)).toThrow(
      expect.objectContaining({ code: 'CHART_INVALID' }),
    );
  });

  it('scoreLine credits nothing to a note in a break, though it leads to the chord after it', () => {
    const broken = makeChart(parseForm('| I7 | N.C. | IV7 |'), 'G');
    const [, leading] = scoreLine(play('G4@0 B4@7.25/0.5 C5@8'), broken, { swing: 1 }).notes;
    expect(leading).toMatchObject({ class: 'unjudged', credit: 0, weight: 0, resolvesTo: 2 });
  });

  it('scoreLine judges over a break by neither chord', () => {
    const broken = makeChart(parseForm('| I7 | N.C. | IV7 |'), 'G');
    const { notes, changes, played } = scoreLine(play('B4@2/8 C5@8'), broken);
    expect(notes.map(({ class: kind, weight }) => [kind, weight])).toEqual([
      ['guide-tone', 2.5],
      ['unjudged', 0],
      ['clash', 2],
      ['root', 1.5],
    ]);
    expect(changes.map(({ chord }) => chord)).toEqual(['G7', 'C7']);
    expect(played).toBe(1);
  });
});

describe('scoreLine on anything', () => {
  const number = fc.oneof(
    fc.integer({ min: -10, max: 50_000 }),
    fc.constantFrom(0.5, -1, 2 ** 40, 2 ** 53, Number.NaN, Number.POSITIVE_INFINITY, -0),
    fc.constantFrom('0', null, undefined, {}, []),
  );
  const note = fc.record({ start: number, duration: number, pitch: number });

  it('scoreLine gives a score in range or a ReedplateError that says where, for any numbers', () => {
    fc.assert(
      fc.property(fc.array(note, { maxLength: 4 }), (notes) => {
        const line = { metre: '4/4', pickup: 0, notes: notes as TimedNote[] } as const;
        try {
          const { total } = scoreLine(line, chart);
          expect(total >= 0 && total <= 100).toBe(true);
        } catch (error) {
          if (!isReedplateError(error)) throw error;
          expect(['LINE_EMPTY', 'LINE_INVALID']).toContain(error.code);
          if (error.code === 'LINE_INVALID') expect(error.where?.path).toMatch(/^notes\[\d\]/u);
        }
      }),
      { numRuns: 500 },
    );
  });
});
