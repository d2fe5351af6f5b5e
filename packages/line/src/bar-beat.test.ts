import { describe, expect, test } from 'vitest';
import { type BarBeat, type BeatGrid, barBeatAt, tickAt } from './bar-beat.js';
import { makeLine } from './make-line.js';

const range = expect.objectContaining({ code: 'NUMBER_RANGE' });
const straight: BeatGrid = { metre: '4/4', pickup: 0 };

describe('barBeatAt', () => {
  test.each<[number, BeatGrid, number, number]>([
    [0, straight, 1, 1],
    [3839, straight, 1, 5 - 1 / 960],
    [3840, straight, 2, 1],
    [320, straight, 1, 1 + 1 / 3],
    [0, { metre: '4/4', pickup: 960 }, 0, 4],
    [0, { metre: '4/4', pickup: 480 }, 0, 4.5],
    [960, { metre: '4/4', pickup: 960 }, 1, 1],
    [1440, { metre: '12/8', pickup: 0 }, 1, 2],
    [5760 + 480, { metre: '12/8', pickup: 0 }, 2, 1 + 1 / 3],
    [2880, { metre: '3/4', pickup: 0 }, 2, 1],
  ])('puts tick %i of %j at bar %i, beat %d', (tick, grid, bar, beat) => {
    expect(barBeatAt(tick, grid)).toEqual({ bar, beat: expect.closeTo(beat, 9) });
  });

  test('takes a line for a grid', () => {
    expect(barBeatAt(0, makeLine([], { pickup: 960 }))).toEqual({ bar: 0, beat: 4 });
  });

  test.each([[-1], [0.5], [Number.NaN], ['0'], [undefined]])('refuses the tick %s', (tick) => {
    expect(() => barBeatAt(tick as number, straight)).toThrow(range);
  });

  test.each([[-1], [3840], [0.5], [undefined]])('refuses the pickup %s', (pickup) => {
    const grid = { metre: '4/4', pickup } as BeatGrid;
    expect(() => barBeatAt(0, grid)).toThrow(range);
    expect(() => tickAt({ bar: 1, beat: 1 }, grid)).toThrow(range);
  });

  test('refuses a metre that is none', () => {
    expect(() => barBeatAt(0, { metre: '4/5' as '4/4', pickup: 0 })).toThrow(
      expect.objectContaining({ code: 'METRE_UNKNOWN' }),
    );
  });
});

describe('tickAt', () => {
  test.each<[BarBeat, BeatGrid, number]>([
    [{ bar: 1, beat: 1 }, straight, 0],
    [{ bar: 2, beat: 1.5 }, straight, 4320],
    [{ bar: 1, beat: 1 + 1 / 3 }, straight, 320],
    [{ bar: 1, beat: 1 + 2 / 3 }, straight, 640],
    [{ bar: 0, beat: 4 }, { metre: '4/4', pickup: 960 }, 0],
    [{ bar: 1, beat: 4 }, { metre: '12/8', pickup: 480 }, 4800],
  ])('finds %j in %j at tick %i', (place, grid, tick) => {
    expect(tickAt(place, grid)).toBe(tick);
  });

  test.each<[BarBeat, BeatGrid]>([
    [{ bar: 0, beat: 1 }, straight],
    [
      { bar: 0, beat: 3.9 },
      { metre: '4/4', pickup: 960 },
    ],
    [{ bar: 1, beat: 0.5 }, straight],
    [{ bar: 1, beat: 5 }, straight],
    [{ bar: 1, beat: 1.0001 }, straight],
    [{ bar: 1.5, beat: 1 }, straight],
    [{ bar: -1, beat: 1 }, straight],
    [{ bar: 1, beat: Number.NaN }, straight],
    [{ bar: Number.MAX_SAFE_INTEGER, beat: 1 }, straight],
    [{ bar: 1, beat: '1' as unknown as number }, straight],
  ])('refuses %j in %j', (place, grid) => {
    expect(() => tickAt(place, grid)).toThrow(range);
  });

  test('says the bar and beat that it refused', () => {
    expect(() => tickAt({ bar: 2, beat: 9 }, straight)).toThrow(
      expect.objectContaining({ value: 9, where: { bar: 2, beat: 9 } }),
    );
  });
});

describe('bars counted in', () => {
  const counted = { metre: '4/4', pickup: 0, countIn: 2 } as const;

  test.each([
    [0, { bar: -1, beat: 1 }],
    [3840, { bar: 0, beat: 1 }],
    [6720, { bar: 0, beat: 4 }],
    [7680, { bar: 1, beat: 1 }],
  ])('come before bar 1: tick %i is %j', (tick, place) => {
    expect(barBeatAt(tick, counted)).toEqual(place);
    expect(tickAt(place, counted)).toBe(tick);
  });

  test('have no bar before the first of them', () => {
    const error = expect.objectContaining({ code: 'NUMBER_RANGE' });
    expect(() => tickAt({ bar: -2, beat: 1 }, counted)).toThrow(error);
    expect(() => tickAt({ bar: -1, beat: 1 }, { ...counted, countIn: 1 })).toThrow(error);
    expect(() => barBeatAt(0, { ...counted, countIn: 0.5 })).toThrow(error);
  });
});
