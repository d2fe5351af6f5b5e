import { describe, expect, test } from 'vitest';

import { chordChanges, nextChange, previousChange } from './chord-changes.js';
import { makeChart } from './make-chart.js';
import { parseForm } from './parse-form.js';

const told = (text: string, options = {}) =>
  chordChanges(makeChart(parseForm(text), 'C', { ...options })).map(
    ({ start, end, chord }) => `${start}-${end} ${chord?.symbol ?? 'N.C.'}`,
  );

describe('chordChanges', () => {
  test('chordChanges join bars and chords that go on', () => {
    expect(told('I7 | I7 | I7 V7 | V7')).toEqual(['0-9600 C7', '9600-15360 G7']);
  });

  test('chordChanges join the same chord under another numeral', () => {
    expect(told('V7/V | II7 | V7')).toEqual(['0-7680 D7', '7680-11520 G7']);
  });

  test('chordChanges part C from C7', () => {
    expect(told('I | I7')).toEqual(['0-3840 C', '3840-7680 C7']);
  });

  test('chordChanges join breaks, and part them from chords', () => {
    expect(told('I7 | N.C. | N.C. | I7')).toEqual([
      '0-3840 C7',
      '3840-11520 N.C.',
      '11520-15360 C7',
    ]);
  });

  test('chordChanges go through from chorus to chorus', () => {
    expect(told('I7 | V7 | I7', { choruses: 2 })).toEqual([
      '0-3840 C7',
      '3840-7680 G7',
      '7680-15360 C7',
      '15360-19200 G7',
      '19200-23040 C7',
    ]);
  });

  test('chordChanges keep the place where the chord begins', () => {
    const changes = chordChanges(makeChart('basic', 'G', { choruses: 2, pickup: 480 }));
    expect(changes[0]).toMatchObject({ start: 480, bar: 1, chorus: 1, beat: 1 });
    expect(changes[1]).toMatchObject({ bar: 5, barOfForm: 5, numeral: 'IV7' });
    expect(changes.at(-1)).toMatchObject({ bar: 24, chorus: 2, barOfForm: 12 });
    expect(Object.isFrozen(changes)).toBe(true);
  });
});

describe('nextChange and previousChange', () => {
  const changes = chordChanges(makeChart(parseForm('I7 | V7'), 'C', { pickup: 960 }));

  test.each([
    [0, undefined, 960],
    [959, undefined, 960],
    [960, 960, 4800],
    [4799, 960, 4800],
    [4800, 4800, undefined],
    [1e9, 4800, undefined],
  ])('at tick %d the chord was reached at %s and goes at %s', (tick, before, after) => {
    expect(previousChange(changes, tick)?.start).toBe(before);
    expect(nextChange(changes, tick)?.start).toBe(after);
  });

  test.each([-1, 0.5, Number.NaN, Number.POSITIVE_INFINITY])('they refuse tick %d', (tick) => {
    const refused = expect.objectContaining({ code: 'NUMBER_RANGE' });
    expect(() => nextChange(changes, tick)).toThrow(refused);
    expect(() => previousChange(changes, tick)).toThrow(refused);
  });

  test('without changes there is none', () => {
    expect(nextChange([], 0)).toBeUndefined();
    expect(previousChange([], 0)).toBeUndefined();
  });

  test('nextChange looks at about as many changes as the logarithm of their number', () => {
    const many = chordChanges(makeChart(parseForm('I7 | V7'), 'C', { choruses: 1000 }));
    let looked = 0;
    const counted = new Proxy(many, {
      get: (target, field) => {
        if (/^\d+$/u.test(String(field))) looked += 1;
        return Reflect.get(target, field);
      },
    });
    expect(nextChange(counted, 3_000_000)?.start).toBe(3_002_880);
    expect(looked).toBeLessThanOrEqual(Math.ceil(Math.log2(many.length)) + 2);
  });
});
