import { ReedplateError } from '@reedplate/pitch';

/** A part of the input: bytes of whole lines, each closed; or a line that cannot be read, and why. */
export type InputPart = Buffer | ReedplateError;

/** Reads the next bytes into a buffer from an offset on; gives how many, 0 at the end. */
export type ReadInto = (buffer: Buffer, offset: number) => Promise<number>;

/** Longest line, in bytes: a tune of 100,000 notes has room; what is longer is a mistake. */
export const LONGEST_LINE = 16 * 1024 * 1024;

/** Bytes read at once. */
const CHUNK = 128 * 1024;
const LINE_END = 10;

/**
 * Reads input in parts that end where a line does; the last line is closed where it was not. Every
 * part lies in the same memory and is good until the next is asked for: memory that is let go is
 * not taken back at once, and would grow with the input.
 */
export async function* wholeLines(
  readInto: ReadInto,
  { chunk = CHUNK, longest = LONGEST_LINE } = {},
): AsyncGenerator<InputPart> {
  let buffer = Buffer.allocUnsafe(chunk);
  /** Bytes of a line begun, at the front; and whether it is too long, and passed over to its end. */
  let begun = 0;
  let isTooLong = false;
  for (;;) {
    // One byte is kept free, to close a last line.
    if (begun >= buffer.length - 1) {
      isTooLong ||= begun >= longest;
      if (isTooLong) begun = 0;
      else buffer = Buffer.concat([buffer], Math.min(2 * buffer.length, longest + 1));
    }
    const read = await readInto(buffer.subarray(0, buffer.length - 1), begun);
    if (read === 0) break;
    const filled = buffer.subarray(0, begun + read);
    let from = 0;
    if (isTooLong) {
      from = filled.indexOf(LINE_END) + 1;
      begun = 0;
      if (from === 0) continue;
      isTooLong = false;
      yield tooLong(longest);
    }
    const end = Math.max(from, filled.lastIndexOf(LINE_END) + 1);
    if (end > from) yield filled.subarray(from, end);
    begun = filled.length - end;
    buffer.copyWithin(0, end, filled.length);
  }
  if (isTooLong) yield tooLong(longest);
  else if (begun > 0) {
    buffer[begun] = LINE_END;
    yield buffer.subarray(0, begun + 1);
  }
}

/** The error of a line that is longer than what is read. */
export function tooLong(longest: number): ReedplateError {
  return new ReedplateError({
    code: 'FILE_TOO_LARGE',
    value: 'a line',
    expected: `at most ${Math.round(longest / 1024 / 1024)} MB a line`,
  });
}
