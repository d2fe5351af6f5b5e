import { constants, deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { inflate, TooMuchData } from './inflate.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const MOST = 1 << 20;
const strategies = [
  constants.Z_DEFAULT_STRATEGY,
  constants.Z_FIXED,
  constants.Z_HUFFMAN_ONLY,
  constants.Z_RLE,
];

/** Bytes with much and with little that comes again. */
const bytes = fc.oneof(
  fc.uint8Array({ maxLength: 2000 }),
  fc
    .tuple(fc.uint8Array({ minLength: 1, maxLength: 40 }), fc.integer({ min: 1, max: 900 }))
    .map(([part, times]) => Uint8Array.from(Array.from({ length: times }, () => [...part]).flat())),
);

describe('inflate', () => {
  // Outside check: what zlib (Node's) deflates, at every level and by every strategy.
  test('inflate undoes what zlib deflates', () => {
    fc.assert(
      fc.property(
        bytes,
        fc.integer({ min: 0, max: 9 }),
        fc.constantFrom(...strategies),
        (data, level, strategy) => {
          const packed = deflateRawSync(data, { level, strategy });
          expect(Buffer.compare(inflate(packed, MOST), data)).toBe(0);
        },
      ),
      { numRuns: 300 },
    );
  });

  test('inflate stops where more would come out than is allowed', () => {
    const packed = deflateRawSync(new Uint8Array(100_000));
    expect(inflate(packed, 100_000).length).toBe(100_000);
    expect(() => inflate(packed, 99_999)).toThrowError(TooMuchData);
  });

  test('inflate stops early on a bomb, with a small part of it in memory', () => {
    // Nothing but zeros: a thousand to one, the most that deflate packs.
    const zeros = deflateRawSync(new Uint8Array(64 * 1024 * 1024), { level: 9 });
    const before = process.memoryUsage().arrayBuffers;
    expect(() => inflate(zeros, MOST)).toThrowError(TooMuchData);
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(20 * 1024 * 1024);
  });

  test('inflate unpacks what is larger than the pieces it is read by', () => {
    const noise = Uint8Array.from({ length: 200_000 }, (_, at) => (at * at * 31 + (at >> 3)) % 251);
    for (const level of [0, 1, 9]) {
      const packed = deflateRawSync(noise, { level });
      expect(Buffer.compare(inflate(packed, MOST), noise)).toBe(0);
    }
  });

  test('inflate ends with no more than is allowed or an error, whatever it is given', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (wild) => {
        try {
          expect(inflate(wild, MOST).length).toBeLessThanOrEqual(MOST);
        } catch (error) {
          expect(error).toBeInstanceOf(Error);
        }
      }),
      { numRuns: 500 },
    );
  });

  test.each([
    ['a kind of block that is none', [0b111]],
    ['a stored block that is cut short', [1, 4, 0, 0xfb, 0xff, 1]],
    ['a repeat of what did not come', [0b011, 0b10, 0, 0]],
  ])('inflate refuses %s', (_, data) => {
    expect(() => inflate(Uint8Array.from(data), MOST)).toThrowError();
  });
});
