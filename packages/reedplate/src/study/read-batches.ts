import { createInterface } from 'node:readline';
import type { Readable } from 'node:stream';
import type { StudyBatch } from './batch.js';

/** Lines handed to a worker at once: enough to outweigh the handing over, few enough to spread. */
export const BATCH_SIZE = 16;

/** Reads a stream line by line into batches, from the line after `done` on. */
export async function* readBatches(input: Readable, done: number): AsyncGenerator<StudyBatch> {
  let number = 0;
  let texts: string[] = [];
  for await (const text of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })) {
    number += 1;
    if (number > done) texts.push(text);
    if (texts.length < BATCH_SIZE) continue;
    yield { first: number - texts.length + 1, texts };
    texts = [];
  }
  if (texts.length > 0) yield { first: number - texts.length + 1, texts };
}
