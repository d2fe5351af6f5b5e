import { type Line, makeLine, parseMetre, transposeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { lines } from './arbitraries.fixture.js';
import { layFeel } from './feel.js';
import { GRID_IDS, GRIDS, type GridId, quantiseLine } from './quantise.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const note = (start: number, duration: number, pitch = 67) => ({ start, duration, pitch });

/** A take by hand: any ticks at all. */
const takes = lines({ unit: 1, chords: true }).chain((line) =>
  fc
    .array(fc.integer({ min: 0, max: 900 }), {
      minLength: line.notes.length,
      maxLength: line.notes.length,
    })
    .map((moves): Line => {
      let shift = 0;
      const notes = line.notes.map(({ start, duration, pitch }, at) => {
        shift += moves[at] ?? 0;
        return { start: start + shift, duration: duration + (moves[at] ?? 0), pitch };
      });
      return makeLine(notes, { metre: line.metre, pickup: line.pickup });
    }),
);

const fitting = ({ metre }: Line): readonly GridId[] =>
  GRID_IDS.filter((id) => parseMetre(metre).beatTicks % GRIDS[id] === 0);

/** A take with one grid or several that fit its metre. */
const cases = takes.chain((line) =>
  fc
    .uniqueArray(fc.constantFrom(...fitting(line)), { minLength: 1, maxLength: 3 })
    .map((grid) => ({ line, grid })),
);

describe('laws of quantiseLine', () => {
  test('quantiseLine twice is quantiseLine once', () => {
    fc.assert(
      fc.property(cases, ({ line, grid }) => {
        const once = quantiseLine(line, { grid });
        expect(quantiseLine(once, { grid })).toEqual(once);
      }),
    );
  });

  test('quantiseLine keeps the number of notes, their pitches and their order', () => {
    fc.assert(
      fc.property(cases, ({ line, grid }) => {
        // Notes carry their place as a pitch apart, so that no two are alike.
        const marked = { ...line, notes: line.notes.map((each, at) => ({ ...each, pitch: at })) };
        const laid = quantiseLine(marked, { grid }).notes;
        expect(laid.map(({ pitch }) => pitch).sort((a, b) => a - b)).toEqual([...laid.keys()]);
        const starts = [...laid].sort((a, b) => a.pitch - b.pitch).map(({ start }) => start);
        expect(starts).toEqual([...starts].sort((a, b) => a - b));
      }),
    );
  });

  test('quantiseLine moves a beginning by half a step at most, where a point is on both sides', () => {
    fc.assert(
      fc.property(cases, ({ line, grid }) => {
        const step = Math.max(...grid.map((id) => GRIDS[id]));
        const before = line.notes.map(({ start }) => start);
        const after = quantiseLine(line, { grid }).notes.map(({ start }) => start);
        before.sort((a, b) => a - b);
        for (const [at, start] of after.entries()) {
          const most = (before[at] as number) < step ? step : step / 2;
          expect(Math.abs(start - (before[at] as number))).toBeLessThanOrEqual(most);
        }
      }),
    );
  });

  test('quantiseLine gives notes that begin and end on a grid, a step long at least', () => {
    fc.assert(
      fc.property(cases, ({ line, grid }) => {
        const steps = grid.map((id) => GRIDS[id]);
        const isOn = (tick: number): boolean =>
          steps.some((step) => (tick - line.pickup) % step === 0);
        for (const { start, duration } of quantiseLine(line, { grid }).notes) {
          expect([isOn(start), isOn(start + duration)]).toEqual([true, true]);
          expect(duration).toBeGreaterThanOrEqual(Math.min(...steps.map((step) => step / 2)));
        }
      }),
    );
  });

  test('quantiseLine leaves a line that is on the grid as it is', () => {
    const onGrid = lines({ unit: 240, chords: true }).map((line) => {
      const { title: _, ...head } = line;
      return makeLine(line.notes, { ...head, pickup: 0 });
    });
    fc.assert(
      fc.property(onGrid, (line) => {
        expect(quantiseLine(line)).toEqual(line);
      }),
    );
  });

  test('quantiseLine and transposeLine come to the same in either order', () => {
    fc.assert(
      fc.property(cases, ({ line, grid }) => {
        expect(quantiseLine(transposeLine(line, 5), { grid })).toEqual(
          transposeLine(quantiseLine(line, { grid }), 5),
        );
      }),
    );
  });

  test('quantiseLine undoes swing played with any hand that is nearer to its eighth than to others', () => {
    const eighths = lines({ unit: 480, chords: false }).map(({ notes }) => makeLine(notes));
    const swing = fc.double({ min: 1.2, max: 3, noNaN: true });
    fc.assert(
      fc.property(eighths, swing, (line, ratio) => {
        expect(quantiseLine(layFeel(line, { ratio }), { grid: '1/8', swing: ratio })).toEqual(line);
        expect(quantiseLine(layFeel(line, { ratio }), { grid: '1/8', swing: 2 })).toEqual(line);
      }),
    );
  });
});

describe('quantiseLine', () => {
  test('quantiseLine takes for each beat the grid that its notes lie nearest to', () => {
    const take = makeLine([
      note(5, 460),
      note(490, 440),
      note(955, 300),
      note(1290, 310),
      note(1590, 300),
    ]);
    expect(quantiseLine(take, { grid: ['1/8', '1/8t'] }).notes).toEqual([
      note(0, 480),
      note(480, 480),
      note(960, 320),
      note(1280, 320),
      note(1600, 320),
    ]);
  });

  test('quantiseLine lets the ends decide where beginnings leave the grid open, then the first grid', () => {
    const short = makeLine([note(0, 330)]);
    expect(quantiseLine(short, { grid: ['1/8', '1/8t'] }).notes).toEqual([note(0, 320)]);
    const open = makeLine([note(0, 1)]);
    expect(quantiseLine(open, { grid: ['1/8', '1/8t'] }).notes).toEqual([note(0, 480)]);
    expect(quantiseLine(open, { grid: ['1/8t', '1/8'] }).notes).toEqual([note(0, 320)]);
  });

  test('quantiseLine closes gaps and overlaps smaller than half a step', () => {
    const take = makeLine([note(0, 430, 67), note(478, 500, 70), note(961, 200, 72)]);
    expect(quantiseLine(take, { grid: '1/8' }).notes).toEqual([
      note(0, 480, 67),
      note(480, 480, 70),
      note(960, 480, 72),
    ]);
  });

  test('quantiseLine counts the grid from bar 1, so that a pickup stays a pickup', () => {
    const take = makeLine([note(10, 300), note(330, 900)], { pickup: 320 });
    expect(quantiseLine(take, { grid: '1/8t' }).notes).toEqual([note(0, 320), note(320, 960)]);
    const odd = makeLine([note(3, 100)], { pickup: 100 });
    expect(quantiseLine(odd, { grid: '1/8' }).notes).toEqual([note(100, 480)]);
  });

  test('quantiseLine keeps metre, tempo and title', () => {
    const head = { metre: '12/8', tempo: 60, title: 'By hand' } as const;
    expect(quantiseLine(makeLine([note(7, 470)], head), { grid: '1/8' })).toEqual(
      makeLine([note(0, 480)], head),
    );
  });

  test.each([
    ['4/4', '1/8T', /did you mean 1\/8t\?/u],
    ['12/8', '1/8t', /divides the beat of 12\/8: 1\/8, 1\/16, 1\/16t, 1\/32/u],
    ['7/8', '1/4', /divides the beat of 7\/8/u],
    ['4/4', ['1/8', 'valueOf'], /divides the beat of 4\/4/u],
  ])('quantiseLine in %s refuses the grid %j and says which fit', (metre, grid, message) => {
    const line = makeLine([], { metre: metre as '4/4' });
    expect(() => quantiseLine(line, { grid: grid as GridId })).toThrowError(message);
  });

  test('quantiseLine refuses no grid at all, and a swing out of range', () => {
    const line = makeLine([]);
    expect(() => quantiseLine(line, { grid: [] })).toThrowError(
      expect.objectContaining({ code: 'LIST_EMPTY' }),
    );
    for (const swing of [0, 4.1, Number.NaN]) {
      expect(() => quantiseLine(line, { swing })).toThrowError(
        expect.objectContaining({ code: 'NUMBER_RANGE' }),
      );
    }
  });
});
