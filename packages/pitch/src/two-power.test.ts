import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { frequency } from './frequency.js';
import { logOfTwo, powerOfTwo } from './two-power.js';

const WITHIN = 4e-16;
const exponent = fc.double({ min: -100, max: 100, noNaN: true });

describe('powerOfTwo', () => {
  test('is exact for every whole power that a number can hold', () => {
    for (let n = -1074; n <= 1023; n += 1) expect(powerOfTwo(n)).toBe(2 ** n);
    expect(powerOfTwo(-1081)).toBe(0);
    expect(powerOfTwo(1025)).toBe(Number.POSITIVE_INFINITY);
    expect(powerOfTwo(Number.NaN)).toBeNaN();
  });

  // The engine is within an ulp itself, half of 2.3e-16.
  test('is within 4e-16 of the engine', () => {
    fc.assert(
      fc.property(exponent, (x) => {
        expect(Math.abs(powerOfTwo(x) / 2 ** x - 1)).toBeLessThan(WITHIN + 1.2e-16);
      }),
    );
  });

  test('multiplies where exponents add', () => {
    fc.assert(
      fc.property(exponent, exponent, (a, b) => {
        expect((powerOfTwo(a) * powerOfTwo(b)) / powerOfTwo(a + b)).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe('logOfTwo', () => {
  test('is exact for every whole power of two', () => {
    for (let n = -1074; n <= 1023; n += 1) expect(logOfTwo(2 ** n)).toBe(n);
  });

  test('answers as the engine does where there is no logarithm', () => {
    for (const value of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(logOfTwo(value)).toBe(Math.log2(value));
    }
  });

  test('is within 4e-16 of the engine', () => {
    fc.assert(
      fc.property(exponent, (x) => {
        const value = 2 ** x;
        const scale = Math.max(1, Math.abs(Math.log2(value)));
        expect(Math.abs(logOfTwo(value) - Math.log2(value)) / scale).toBeLessThan(WITHIN);
      }),
    );
  });

  test('undoes powerOfTwo', () => {
    fc.assert(
      fc.property(exponent, (x) => {
        expect(logOfTwo(powerOfTwo(x))).toBeCloseTo(x, 12);
      }),
    );
  });
});

describe('the same bits on every engine', () => {
  /** FNV-1a over the eight bytes of each number. */
  function hashOf(numbers: readonly number[]): string {
    const bytes = new DataView(new ArrayBuffer(8));
    let hash = 0x811c9dc5;
    for (const number of numbers) {
      bytes.setFloat64(0, number);
      for (let at = 0; at < 8; at += 1) hash = Math.imul(hash ^ bytes.getUint8(at), 0x01000193);
    }
    return (hash >>> 0).toString(16);
  }

  test('frequency and logOfTwo give the bits that they gave when this was written', () => {
    const tenths = Array.from({ length: 1280 }, (_, at) => at / 10);
    expect(hashOf(tenths.map((pitch) => frequency(pitch, { a4: 442 })))).toBe('577211a');
    expect(hashOf(tenths.map((tenth) => logOfTwo(tenth + 0.05)))).toBe('dd28d4ca');
  });
});
