import { describe, expect, test } from 'vitest';
import { deepFreeze } from './deep-freeze.js';

describe('deepFreeze', () => {
  test('freezes every level and returns the value itself', () => {
    const value = { holes: [{ hole: 1, reeds: { blow: 60 } }] };
    expect(deepFreeze(value)).toBe(value);
    expect(Object.isFrozen(value)).toBe(true);
    expect(Object.isFrozen(value.holes)).toBe(true);
    expect(Object.isFrozen(value.holes[0])).toBe(true);
    expect(Object.isFrozen(value.holes[0]?.reeds)).toBe(true);
  });

  test.each([[1], ['text'], [null], [undefined], [true]])('returns %s as it is', (value) => {
    expect(deepFreeze(value)).toBe(value);
  });

  test('ends on a value that refers to itself', () => {
    const cycle: { self?: unknown } = {};
    cycle.self = cycle;
    expect(Object.isFrozen(deepFreeze(cycle))).toBe(true);
  });
});
