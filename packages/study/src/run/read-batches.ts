import { ReedplateError } from '@reedplate/pitch';
import type { StudyBatch } from './batch.js';

/** What there is to do: a batch, or a line that cannot be read at all. */
export type StudyItem = StudyBatch | { readonly first: number; readonly error: ReedplateError };

const LINE_END = 10;

/**
 * Cuts input into batches of whole lines, from the line after `done` on. Only the ends of lines are
 * looked for, which costs next to nothing: reading them is left to the workers. The bytes of a batch
 * are good until the next is asked for.
 *
 * @param bytes asked before each batch: about how large it shall be; one line is the least
 */
export async function* readBatches(
  parts: AsyncIterable<Uint8Array | ReedplateError>,
  done: number,
  bytes: () => number,
): AsyncGenerator<StudyItem> {
  let number = 0;
  for await (const part of parts) {
    if (part instanceof ReedplateError) {
      number += 1;
      if (number > done) yield { first: number, error: part };
      continue;
    }
    let begin = 0;
    for (; number < done && begin < part.length; number += 1) begin = endOfLine(part, begin);
    while (begin < part.length) {
      const end = endOfLine(part, Math.min(begin + bytes(), part.length) - 1);
      const first = number + 1;
      for (let at = begin; at < end; at = endOfLine(part, at)) number += 1;
      yield { first, lines: part.subarray(begin, end) };
      begin = end;
    }
  }
}

/** Where the next line begins; the part ends with the end of a line, so there is one. */
const endOfLine = (part: Uint8Array, from: number): number => part.indexOf(LINE_END, from) + 1;
