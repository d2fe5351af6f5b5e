import { ReedplateError } from '@reedplate/pitch';
import type { StudyBatch } from './batch.js';

/** What there is to do: a batch, or a tune that cannot be read at all. */
export type StudyItem = StudyBatch | { readonly first: number; readonly error: ReedplateError };

const LINE_END = 10;
const TAB = 9;
const RETURN = 13;
const SPACE = 32;

/**
 * Cuts input into batches of whole lines, from the tune after number `done` on. Only the ends of lines are
 * looked for, and whether they are blank, which costs next to nothing: reading them is left to the workers.
 * The bytes of a batch are good until the next is asked for.
 *
 * @param done number of the last tune that is passed over
 * @param from number of the first tune of this input
 * @param bytes asked before each batch: about how large it shall be; one line is the least
 */
export async function* readBatches(
  parts: AsyncIterable<Uint8Array | ReedplateError>,
  done: number,
  bytes: () => number,
  from = 1,
): AsyncGenerator<StudyItem> {
  let number = from - 1;
  for await (const part of parts) {
    if (part instanceof ReedplateError) {
      number += 1;
      if (number > done) yield { first: number, error: part };
      continue;
    }
    let begin = 0;
    while (number < done && begin < part.length) {
      const end = endOfLine(part, begin);
      number += tunesIn(part, begin, end);
      begin = end;
    }
    while (begin < part.length) {
      const end = endOfLine(part, Math.min(begin + bytes(), part.length) - 1);
      const first = number + 1;
      number += tunesIn(part, begin, end);
      yield { first, lines: part.subarray(begin, end) };
      begin = end;
    }
  }
}

/** How many of some lines are not blank. */
function tunesIn(part: Uint8Array, from: number, to: number): number {
  let tunes = 0;
  for (let at = from, next = 0; at < to; at = next) {
    next = endOfLine(part, at);
    if (!isBlank(part, at, next)) tunes += 1;
  }
  return tunes;
}

/** Where the next line begins; the part ends with the end of a line, so there is one. */
const endOfLine = (part: Uint8Array, from: number): number => part.indexOf(LINE_END, from) + 1;

function isBlank(part: Uint8Array, from: number, to: number): boolean {
  for (let at = from; at < to; at += 1) {
    const byte = part[at];
    if (byte !== SPACE && byte !== TAB && byte !== RETURN && byte !== LINE_END) return false;
  }
  return true;
}
