/** Thrown inside the MIDI reader where bytes run out or cannot be read; never seen outside. */
export class DamagedData extends Error {}

/** Reads bytes one after another, and never past their end. */
export interface ByteReader {
  readonly position: () => number;
  readonly isDone: () => boolean;
  readonly byte: () => number;
  /** The next byte without taking it. */
  readonly peek: () => number;
  /** Whole number of so many bytes, the highest first. */
  readonly number: (bytes: number) => number;
  /** Number of one to four bytes of seven bits, as MIDI files write lengths and times. */
  readonly variable: () => number;
  readonly bytes: (length: number) => Uint8Array;
}

const LONGEST_VARIABLE = 4;

/** A reader of the bytes from `start` to `end`. */
export function readBytes(data: Uint8Array, start = 0, end = data.length): ByteReader {
  let at = start;
  const peek = (): number => {
    if (at >= end) throw new DamagedData('bytes run out');
    return data[at] as number;
  };
  const byte = (): number => {
    const value = peek();
    at += 1;
    return value;
  };
  return {
    position: () => at,
    isDone: () => at >= end,
    peek,
    byte,
    number: (bytes) => {
      let value = 0;
      for (let count = 0; count < bytes; count += 1) value = value * 256 + byte();
      return value;
    },
    variable: () => {
      let value = 0;
      for (let count = 0; count < LONGEST_VARIABLE; count += 1) {
        const next = byte();
        value = value * 128 + (next & 0x7f);
        if (next < 0x80) return value;
      }
      throw new DamagedData('a number is too long');
    },
    bytes: (length) => {
      if (length > end - at) throw new DamagedData('bytes run out');
      at += length;
      return data.subarray(at - length, at);
    },
  };
}
