import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { barsOf, plainNumerals } from './arbitraries.js';
import { barDistance, comparedBar, hasOtherRoots } from './bar-distance.js';
import { makeForm } from './make-form.js';
import { parseForm } from './parse-form.js';
import { RECOGNITION_WEIGHTS as WEIGHTS } from './recognition-weights.js';
import type { FormBar } from './types.js';

const bar = (text: string): FormBar => parseForm(text).bars[0] ?? [];
const distance = (one: string, other: string, tonic = 0) =>
  barDistance(comparedBar(bar(one)), comparedBar(bar(other)), tonic);

const bars = barsOf(plainNumerals).map((chords) => comparedBar(makeForm([chords]).bars[0] ?? []));

describe('barDistance', () => {
  test.each([
    ['I7', 'I7', 0],
    ['I7', 'IV7', WEIGHTS.root],
    ['I7', 'i7', WEIGHTS.third],
    ['I', 'I7', WEIGHTS.extension],
    ['I7', 'I9', WEIGHTS.extension],
    ['I', 'I6', WEIGHTS.extension],
    ['I7', 'Imaj7', WEIGHTS.colour],
    ['im7b5', 'idim7', WEIGHTS.colour],
    ['i7', 'im7b5', WEIGHTS.colour],
    ['I', 'Iaug', WEIGHTS.colour],
    ['I7', 'I7sus4', WEIGHTS.extension],
    ['N.C.', 'I7', WEIGHTS.break],
    ['N.C.', 'N.C.', 0],
  ])('barDistance of %s and %s is %d', (one, other, cost) => {
    expect(distance(one, other)).toBeCloseTo(cost, 12);
    expect(distance(other, one)).toBeCloseTo(cost, 12);
  });

  test('barDistance counts each difference for as long as it sounds', () => {
    expect(distance('I7 V7', 'I7')).toBeCloseTo(0.5, 12);
    expect(distance('I7 / / V7', 'I7')).toBeCloseTo(0.25, 12);
    expect(distance('I7 IV7 V7', 'I7 V7')).toBeCloseTo(1 / 3, 12);
    expect(distance('I7 / / N.C.', 'I7')).toBeCloseTo(WEIGHTS.break / 4, 12);
  });

  test('barDistance compares roots raised to the tonic', () => {
    expect(distance('V7', 'I7', 7)).toBe(0);
    expect(distance('bII7', 'V7', 6)).toBe(0);
    expect(distance('I7', 'I7', 1)).toBe(WEIGHTS.root);
  });

  test('barDistance is 0 of a bar to itself, alike both ways, and at most 1', () => {
    fc.assert(
      fc.property(bars, bars, (one, other) => {
        expect(barDistance(one, one, 0)).toBe(0);
        const there = barDistance(one, other, 0);
        expect(barDistance(other, one, 0)).toBeCloseTo(there, 9);
        expect(there).toBeGreaterThanOrEqual(0);
        expect(there).toBeLessThanOrEqual(1 + 1e-9);
      }),
    );
  });

  test('barDistance of roots all different is 1 whenever no break is in between', () => {
    expect(distance('I7 V7', 'IV7 bVII7')).toBeCloseTo(1, 12);
  });
});

describe('hasOtherRoots', () => {
  test.each([
    ['I7', 'i7', false],
    ['I7', 'N.C.', false],
    ['I7', 'IV7', true],
    ['I7 / / V7', 'I7', true],
  ])('hasOtherRoots of %s and %s is %s', (one, other, differ) => {
    expect(hasOtherRoots(comparedBar(bar(one)), comparedBar(bar(other)), 0)).toBe(differ);
  });

  test('hasOtherRoots says no of bars that agree', () => {
    fc.assert(fc.property(bars, (one) => !hasOtherRoots(one, one, 0)));
  });
});
