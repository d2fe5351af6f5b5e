import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { describeValue } from './describe-value.js';

describe('describeValue', () => {
  test.each<[unknown, string]>([
    ['H4', '"H4"'],
    ['', '""'],
    ['a "quoted"\nword', '"a \\"quoted\\"\\nword"'],
    [12.5, '12.5'],
    [-0, '0'],
    [Number.NaN, 'a number without a value'],
    [Number.POSITIVE_INFINITY, 'an endless number'],
    [Number.NEGATIVE_INFINITY, 'an endless number'],
    [true, 'true'],
    [undefined, 'nothing'],
    [null, 'null'],
    [10n, 'a bigint'],
    [Symbol('x'), 'a symbol'],
    [() => 0, 'a function'],
    [class Harp {}, 'a function'],
    [[], 'an empty list'],
    [['C', 'A'], 'a list of 2'],
    [{}, 'an object'],
    [{ key: 'G', bars: [1, 2] }, 'an object'],
    [Object.create(null), 'an object'],
    [new Map([['key', 'G']]), 'a Map'],
    [new Uint8Array(3), 'a Uint8Array'],
    [new ArrayBuffer(3), 'an ArrayBuffer'],
    [new Date(0), 'a Date'],
    [Promise.resolve('C'), 'a Promise'],
  ])('says in few words what it is (case %#)', (value, words) => {
    expect(describeValue(value)).toBe(words);
  });

  test('shortens long text and keeps a pair of surrogates whole', () => {
    expect(describeValue('a'.repeat(61))).toBe(`"${'a'.repeat(59)}…"`);
    expect(describeValue(`${'a'.repeat(58)}𝄪𝄪`)).toBe(`"${'a'.repeat(58)}…"`);
    expect(describeValue('a'.repeat(60))).toBe(`"${'a'.repeat(60)}"`);
  });

  test('says of hostile objects that they are objects', () => {
    const { proxy, revoke } = Proxy.revocable({}, {});
    revoke();
    expect(describeValue(proxy)).toBe('an object');
    expect(describeValue({ [Symbol.toStringTag]: 'x'.repeat(1e4) })).toBe('an object');
    const throwing = Object.defineProperty({}, Symbol.toStringTag, {
      get: () => {
        throw new Error('no tag');
      },
    });
    expect(describeValue(throwing)).toBe('an object');
  });

  test('is short, and never undefined, NaN or a printed object, whatever the value', () => {
    fc.assert(
      fc.property(fc.anything({ withBigInt: true, withDate: true, withMap: true }), (value) => {
        const words = describeValue(value);
        expect(words.length).toBeLessThan(400);
        if (typeof value === 'string') return;
        expect(words).not.toMatch(/undefined|NaN|\{|\[object/u);
      }),
    );
  });
});
