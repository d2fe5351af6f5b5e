import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { DamagedData, readBytes } from './byte-reader.js';
import { number, variable } from './midi-bytes.fixture.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

describe('readBytes', () => {
  test('readBytes gives bytes one after another, between start and end', () => {
    const reader = readBytes(Uint8Array.of(9, 1, 2, 3, 9), 1, 4);
    expect([reader.position(), reader.peek(), reader.byte(), reader.byte()]).toEqual([1, 1, 1, 2]);
    expect([reader.isDone(), reader.byte(), reader.isDone(), reader.position()]).toEqual([
      ...[false, 3, true, 4],
    ]);
  });

  test('readBytes reads whole numbers, the highest byte first', () => {
    fc.assert(
      fc.property(fc.nat({ max: 2 ** 32 - 1 }), fc.integer({ min: 1, max: 4 }), (value, bytes) => {
        const kept = value % 256 ** bytes;
        expect(readBytes(Uint8Array.from(number(kept, bytes))).number(bytes)).toBe(kept);
      }),
    );
  });

  test('readBytes reads numbers of seven bits a byte, as they are written', () => {
    fc.assert(
      fc.property(fc.nat({ max: 2 ** 28 - 1 }), (value) => {
        const reader = readBytes(Uint8Array.from(variable(value)));
        expect([reader.variable(), reader.isDone()]).toEqual([value, true]);
      }),
    );
  });

  // Standard MIDI Files 1.0, variable-length quantities, the table of examples (value from memory).
  test.each([
    [0x00, [0x00]],
    [0x7f, [0x7f]],
    [0x80, [0x81, 0x00]],
    [0x2000, [0xc0, 0x00]],
    [0x3fff, [0xff, 0x7f]],
    [0x1fffff, [0xff, 0xff, 0x7f]],
    [0x0fffffff, [0xff, 0xff, 0xff, 0x7f]],
  ])('readBytes reads the length %i as the standard writes it', (value, bytes) => {
    expect(readBytes(Uint8Array.from(bytes)).variable()).toBe(value);
  });

  test('readBytes refuses a length of more than four bytes, and bytes that are not there', () => {
    const long = readBytes(Uint8Array.of(0x81, 0x81, 0x81, 0x81, 0x00));
    expect(() => long.variable()).toThrowError(DamagedData);
    const short = readBytes(Uint8Array.of(0x81));
    expect(() => short.variable()).toThrowError('bytes run out');
    const few = readBytes(Uint8Array.of(1, 2));
    expect(() => few.bytes(3)).toThrowError(DamagedData);
    expect(few.position()).toBe(0);
    expect([...few.bytes(2)]).toEqual([1, 2]);
    expect(() => few.peek()).toThrowError(DamagedData);
    expect(() => few.number(1)).toThrowError(DamagedData);
  });
});
