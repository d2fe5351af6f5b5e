import { describe, expect, test } from 'vitest';
import { makeSlots } from './slots.js';

const bytes = (length: number, value: number) => new Uint8Array(length).fill(value);

describe('makeSlots', () => {
  test('makeSlots hands memory out again once it is given back, and never twice at a time', () => {
    const slots = makeSlots();
    const first = slots.take(bytes(3, 1));
    const second = slots.take(bytes(3, 2));
    expect(first.lines.buffer === second.lines.buffer).toBe(false);
    slots.giveBack(first);
    expect(slots.take(bytes(2, 3)).lines.buffer === first.lines.buffer).toBe(true);
  });

  test('makeSlots has room for lines of any length, in memory that threads share', () => {
    const slots = makeSlots();
    for (const length of [0, 1, 64 * 1024, 64 * 1024 + 1, 2 * 1024 * 1024]) {
      const { lines, room } = slots.take(bytes(length, 7));
      expect(lines.length).toBeGreaterThanOrEqual(length);
      expect(lines.subarray(0, length).every((byte) => byte === 7)).toBe(true);
      expect(lines.buffer).toBeInstanceOf(SharedArrayBuffer);
      expect(room.buffer).toBeInstanceOf(SharedArrayBuffer);
    }
  });

  test('makeSlots keeps memory for long lines, but not what one huge line needed', () => {
    const slots = makeSlots();
    const long = slots.take(bytes(200 * 1024, 1));
    slots.giveBack(long);
    expect(slots.take(bytes(1, 1)).lines.length).toBe(200 * 1024);
    const huge = slots.take(bytes(2 * 1024 * 1024, 1));
    slots.giveBack(huge);
    expect(slots.take(bytes(1, 1)).lines.length).toBe(64 * 1024);
  });
});
