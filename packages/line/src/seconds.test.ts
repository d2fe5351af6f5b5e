import { describe, expect, test } from 'vitest';
import { foldTick } from './loop.js';
import { makeLine } from './make-line.js';
import { secondsAt, tickAtSeconds } from './seconds.js';

const error = (code: string) => expect.objectContaining({ code });

describe('secondsAt', () => {
  test.each([
    [0, { tempo: 60 }, 0],
    [960, { tempo: 60 }, 1],
    [960, { tempo: 60, metre: '4/4' }, 1],
    [1440, { tempo: 60, metre: '12/8' }, 1],
    [1920, { tempo: 60, metre: '2/2' }, 1],
    [3840, { tempo: 240 }, 1],
  ] as const)('of tick %i with %j is %d', (tick, timing, seconds) => {
    expect(secondsAt(tick, timing)).toBe(seconds);
  });

  test('counts each stretch at its tempo: by hand, 2 beats at 60, 4 at 120, the rest at 30', () => {
    const tempoChanges = [
      { start: 1920, tempo: 120 },
      { start: 5760, tempo: 30 },
    ];
    const line = makeLine([], { tempo: 60, tempoChanges });
    expect([1920, 3840, 5760, 6720].map((tick) => secondsAt(tick, line))).toEqual([2, 3, 4, 6]);
    expect([2, 3, 4, 6].map((second) => tickAtSeconds(second, line))).toEqual([
      1920, 3840, 5760, 6720,
    ]);
  });

  test('goes round a loop at the tempos written in it', () => {
    const timing = { tempo: 60, tempoChanges: [{ start: 1920, tempo: 120 }] };
    const loop = { start: 960, end: 2880 };
    // One beat before the loop; in it one beat at 60 and one at 120.
    expect([960, 2880, 3840, 4800].map((tick) => secondsAt(tick, timing, { loop }))).toEqual([
      1, 2.5, 3.5, 4,
    ]);
    expect(tickAtSeconds(3.5, timing, { loop })).toBe(3840);
  });

  test.each([[-1], [0.5], [Number.NaN], ['0'], [undefined]])('refuses the tick %s', (tick) => {
    expect(() => secondsAt(tick as number, { tempo: 60 })).toThrow(error('NUMBER_RANGE'));
  });

  test.each<[unknown, string]>([
    [{}, 'TEMPO_MISSING'],
    [null, 'TEMPO_MISSING'],
    [undefined, 'TEMPO_MISSING'],
    [120, 'TEMPO_MISSING'],
    [makeLine([]), 'TEMPO_MISSING'],
    [{ tempo: 0 }, 'NUMBER_RANGE'],
    [{ tempo: '120' }, 'NUMBER_RANGE'],
    [{ tempo: 1e-9 }, 'NUMBER_RANGE'],
    [{ tempo: 60, tempoChanges: {} }, 'NUMBER_RANGE'],
    [{ tempo: 60, tempoChanges: [{ start: 0, tempo: 60 }] }, 'NUMBER_RANGE'],
    [{ tempo: 60, metre: '4/5' }, 'METRE_UNKNOWN'],
  ])('refuses the timing %j', (timing, code) => {
    expect(() => secondsAt(0, timing as { tempo: number })).toThrow(error(code));
    expect(() => tickAtSeconds(0, timing as { tempo: number })).toThrow(error(code));
  });
});

describe('tickAtSeconds', () => {
  test('counts at a beat in a day, and no slower', () => {
    expect(secondsAt(960, { tempo: 1 / 1440 })).toBeCloseTo(86_400, 6);
    expect(() => secondsAt(960, { tempo: 1 / 1441 })).toThrow(error('NUMBER_RANGE'));
    const tempoChanges = [1e-4, 1e-5].map((tempo, at) => ({ start: 960 * (at + 1), tempo }));
    expect(() => secondsAt(960, { tempo: 60, tempoChanges })).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE', value: 1e-4 }),
    );
  });

  test('rounds to the nearest tick', () => {
    expect(tickAtSeconds(1.0004, { tempo: 60 })).toBe(960);
    expect(tickAtSeconds(1.0006, { tempo: 60 })).toBe(961);
  });

  test.each([[-0.1], [Number.NaN], [Number.POSITIVE_INFINITY], ['1'], [null], [1e300]])(
    'refuses %s seconds',
    (seconds) => {
      expect(() => tickAtSeconds(seconds as number, { tempo: 60 })).toThrow(error('NUMBER_RANGE'));
    },
  );

  test.each([[-1], [0.5], [Number.NaN], ['0']])('foldTick refuses the tick %s', (tick) => {
    const loop = { start: 0, end: 960 };
    expect(() => foldTick(tick as number, loop)).toThrow(error('NUMBER_RANGE'));
  });

  test.each([
    [{ start: 960, end: 960 }],
    [{ start: -1, end: 960 }],
    [{ start: 0, end: 0.5 }],
    [{ start: 0 } as { start: number; end: number }],
  ])('refuses the loop %j, and so do secondsAt and foldTick', (loop) => {
    expect(() => tickAtSeconds(1, { tempo: 60 }, { loop })).toThrow(error('NUMBER_RANGE'));
    expect(() => secondsAt(1, { tempo: 60 }, { loop })).toThrow(error('NUMBER_RANGE'));
    expect(() => foldTick(1, loop)).toThrow(error('NUMBER_RANGE'));
  });
});
