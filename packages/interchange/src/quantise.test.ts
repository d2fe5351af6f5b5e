import { type Line, makeLine, parseMetre, transposeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { lines } from './arbitraries.fixture.js';
import { GRID_IDS, GRIDS, type GridId, quantiseLine } from './quantise.js';
import { applySwing } from './swing.js';

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
      const { title: _, notes, ...head } = line;
      return makeLine(notes, { ...head, pickup: 0 });
    });
    fc.assert(
      fc.property(onGrid, (line) => {
        expect(quantiseLine(line)).toEqual(line);
      }),
    );
  });

  /** A line on a grid, and as it is played: each beginning and end off by up to a part of a step. */
  const playedOff = (most: number) =>
    fc
      .constantFrom<GridId>('1/4', '1/8', '1/8t', '1/16', '1/16t', '1/32')
      .chain((grid) =>
        fc.record({
          grid: fc.constant(grid),
          line: lines({ unit: GRIDS[grid], chords: false }),
          off: fc.array(fc.double({ min: -most, max: most, noNaN: true }), {
            minLength: 120,
            maxLength: 120,
          }),
        }),
      )
      .map(({ grid, line: { notes }, off }) => {
        const move = (tick: number, at: number): number =>
          Math.max(0, tick + Math.trunc((off[at] ?? 0) * GRIDS[grid]));
        const played = notes.map(({ start, duration, pitch }, at) => {
          const from = move(start, 2 * at);
          const to = move(start + duration, 2 * at + 1);
          return { start: from, duration: Math.max(1, to - from), pitch };
        });
        return { grid, line: makeLine(notes), played: makeLine(played) };
      });

  test('quantiseLine gives back a line that is played less than a quarter of a step off its grid', () => {
    fc.assert(
      fc.property(playedOff(0.24), ({ grid, line, played }) => {
        expect(quantiseLine(played, { grid })).toEqual(line);
      }),
      { numRuns: 300 },
    );
  });

  // A rest of one step may be played so short that its note meets the next.
  test('quantiseLine gives back beginnings less than half a step off, and ends, or where the next note begins', () => {
    fc.assert(
      fc.property(playedOff(0.49), ({ grid, line, played }) => {
        const laid = quantiseLine(played, { grid }).notes;
        expect(laid.map(({ start, pitch }) => [start, pitch])).toEqual(
          line.notes.map(({ start, pitch }) => [start, pitch]),
        );
        for (const [at, { start, duration }] of line.notes.entries()) {
          const end = (laid[at]?.start ?? 0) + (laid[at]?.duration ?? 0);
          expect([start + duration, line.notes[at + 1]?.start]).toContain(end);
        }
      }),
      { numRuns: 300 },
    );
  });

  test('quantiseLine finds which beats are straight and which are divided in three', () => {
    const beat = fc.constantFrom<readonly number[]>(
      ...[[960], [480, 480], [320, 320, 320], [640, 320], [320, 640]],
    );
    const moves = fc.array(fc.integer({ min: -35, max: 35 }), { minLength: 80, maxLength: 80 });
    fc.assert(
      fc.property(fc.array(beat, { minLength: 1, maxLength: 12 }), moves, (beats, off) => {
        let at = 0;
        const notes = beats.flat().map((duration, index) => {
          const start = at;
          at += duration;
          return { start, duration, pitch: 60 + index };
        });
        const edges = [...notes.map(({ start }) => start), at].map((tick, index) =>
          Math.max(0, tick + (off[index] ?? 0)),
        );
        const played = notes.map(({ pitch }, index) => {
          const start = edges[index] ?? 0;
          return { start, duration: (edges[index + 1] ?? 0) - start, pitch };
        });
        const { notes: laid } = quantiseLine(makeLine(played), { grid: ['1/8', '1/8t'] });
        expect(laid).toEqual(notes);
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
        expect(quantiseLine(applySwing(line, { ratio }), { grid: '1/8', swing: ratio })).toEqual(
          line,
        );
        expect(quantiseLine(applySwing(line, { ratio }), { grid: '1/8', swing: 2 })).toEqual(line);
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

  test('quantiseLine lets an end meet the next beginning, where both lie about half way', () => {
    const take = makeLine([note(0, 130, 67), note(100, 400, 70)]);
    expect(quantiseLine(take, { grid: '1/16' }).notes).toEqual([
      note(0, 240, 67),
      note(0, 480, 70),
    ]);
    const legato = makeLine([note(0, 380, 67), note(350, 400, 70)]);
    expect(quantiseLine(legato, { grid: '1/16' }).notes).toEqual([
      note(0, 240, 67),
      note(240, 480, 70),
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
