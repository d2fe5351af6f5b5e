import { describe, expect, test } from 'vitest';
import { lazily } from './lazily.js';

describe('lazily', () => {
  test('makes the value when it is first asked for, and only once', () => {
    let calls = 0;
    const value = lazily(() => {
      calls += 1;
      return { calls };
    });
    expect(calls).toBe(0);
    expect(value()).toBe(value());
    expect(calls).toBe(1);
  });

  test('keeps a value that counts as false', () => {
    let calls = 0;
    const nothing = lazily(() => {
      calls += 1;
      return undefined;
    });
    expect(nothing()).toBeUndefined();
    expect(nothing()).toBeUndefined();
    expect(calls).toBe(1);
  });

  test('asks again where making failed', () => {
    let calls = 0;
    const value = lazily(() => {
      calls += 1;
      if (calls === 1) throw new Error('not yet');
      return calls;
    });
    expect(value).toThrow('not yet');
    expect(value()).toBe(2);
  });
});
