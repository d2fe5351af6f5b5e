import { constants, deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { DamagedArchive, inflate, TooMuchData } from './inflate.js';

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

  test('inflate ends with data or one of its errors, whatever it is given', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (wild) => {
        try {
          expect(inflate(wild, MOST).length).toBeLessThanOrEqual(MOST);
        } catch (error) {
          expect(error instanceof DamagedArchive || error instanceof TooMuchData).toBe(true);
        }
      }),
      { numRuns: 500 },
    );
  });

  test.each([
    ['nothing', []],
    ['a kind of block that is none', [0b111]],
    ['a stored length that does not match', [1, 1, 0, 1, 0, 0]],
    ['a stored block that is cut short', [1, 4, 0, 0xfb, 0xff, 1]],
    ['a repeat of what did not come', [0b011, 0b10, 0, 0]],
  ])('inflate refuses %s', (_, data) => {
    expect(() => inflate(Uint8Array.from(data), MOST)).toThrowError(DamagedArchive);
  });
});
