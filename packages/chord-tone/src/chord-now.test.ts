import { chartEnd, chordChanges, FORMS, makeChart, parseForm } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { secondsAt } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chordNow } from './chord-now.js';

const chart = makeChart('quick-change', 'G', { tempo: 120 });
const BAR = 3840;
const symbols = (tick: number) => {
  const { now, next, ticksLeft } = chordNow(chart, { tick });
  return [now?.chord?.symbol, next?.chord?.symbol, ticksLeft];
};

describe('chordNow', () => {
  test.each([
    [0, ['G7', 'C7', BAR]],
    [BAR + 1, ['C7', 'G7', BAR - 1]],
    [4 * BAR - 1, ['G7', 'C7', 1]],
    [11 * BAR, ['D7', 'G7', BAR]],
    [12 * BAR, ['G7', 'C7', BAR]],
  ])('chordNow at tick %d says what sounds and what comes: %j', (tick, expected) => {
    expect(symbols(tick)).toEqual(expected);
  });

  test('chordNow holds a chord round the corner where a form ends on what it begins with', () => {
    const round = makeChart('quick-change', 'G', { choruses: 1 });
    const loop = { start: 0, end: 11 * BAR };
    const found = chordNow(round, { tick: 10 * BAR }, { loop });
    expect(found.now?.chord?.symbol).toBe('G7');
    expect([found.next?.chord?.symbol, found.ticksLeft]).toEqual(['C7', 2 * BAR]);
  });

  test('chordNow holds a chord round the corner of a loop that begins later', () => {
    const loop = { start: 8 * BAR, end: 11 * BAR };
    const form = parseForm('I7 | I7 | I7 | I7 | I7 | I7 | I7 | I7 | I7 | IV7 | I7 | I7');
    const round = makeChart(form, 'G');
    const found = chordNow(round, { tick: 10 * BAR }, { loop });
    expect([found.now?.chord?.symbol, found.next?.chord?.symbol]).toEqual(['G7', 'C7']);
    expect(found.ticksLeft).toBe(2 * BAR);
  });

  test('chordNow knows no next chord where there is but one', () => {
    const { now, next, ticksLeft, nextTargets } = chordNow(makeChart('vamp', 'E'), { tick: 5 });
    expect([now?.chord?.symbol, next, ticksLeft, nextTargets]).toEqual(['E7', null, null, []]);
  });

  test('chordNow counts bars, beats and passes', () => {
    expect(chordNow(chart, { tick: 12 * BAR + 960 })).toMatchObject({
      pass: 2,
      bar: 1,
      beat: 2,
      tick: 960,
    });
  });

  test('chordNow gives the holes of both chords on a harp', () => {
    const { targets, nextTargets } = chordNow(chart, { tick: 0 }, { harp: makeHarp('C') });
    const roots = (list: typeof targets) =>
      list
        .filter(({ degree, sounding }) => degree === '1' && sounding.technique === 'natural')
        .map(({ sounding }) => `${sounding.hole} ${sounding.breath}`);
    expect(roots(targets)).toEqual(['2 draw', '3 blow', '6 blow', '9 blow']);
    expect(roots(nextTargets)).toEqual(['1 blow', '4 blow', '7 blow', '10 blow']);
  });

  test('chordNow by seconds is chordNow by the tick of that second', () => {
    const forms = fc.constantFrom(...FORMS);
    fc.assert(
      fc.property(forms, fc.integer({ min: 0, max: 400_000 }), (form, tick) => {
        const song = makeChart(form, 'A', { tempo: 96 });
        const loop = { start: 0, end: chartEnd(song) };
        const seconds = secondsAt(tick, song, { loop });
        expect(chordNow(song, { seconds })).toEqual(chordNow(song, { tick }));
      }),
      { numRuns: 100 },
    );
  });

  test('chordNow repeats itself a loop later, and its next chord is what sounds when it is due', () => {
    fc.assert(
      fc.property(fc.constantFrom(...FORMS), fc.integer({ min: 0, max: 200_000 }), (form, tick) => {
        const song = makeChart(form, 'C');
        const { pass, ...found } = chordNow(song, { tick });
        const { pass: later, ...again } = chordNow(song, { tick: tick + chartEnd(song) });
        expect(again).toEqual(found);
        expect(later).toBe(pass + 1);
        if (found.ticksLeft === null) {
          expect(chordChanges(song)).toHaveLength(1);
          return;
        }
        const due = chordNow(song, { tick: tick + found.ticksLeft });
        expect(due.now?.chord?.symbol).toBe(found.next?.chord?.symbol);
        const before = chordNow(song, { tick: tick + found.ticksLeft - 1 });
        expect(before.now?.chord?.symbol).toBe(found.now?.chord?.symbol);
      }),
      { numRuns: 200 },
    );
  });

  test('chordNow refuses what is no place', () => {
    expect(() => chordNow(chart, { tick: -1 })).toThrow(/a tick/u);
    expect(() => chordNow(chart, { seconds: Number.NaN })).toThrow(/seconds/u);
    expect(() => chordNow(chart, {} as { tick: number })).toThrow(/a place/u);
  });
});
