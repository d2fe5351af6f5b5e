import { studyTune } from '../study.js';
import { makeStudySetup } from '../study-setup.js';
import { isInShare, type StudyShare } from './share.js';

/** Whole lines of a study's input, as they came: reading them is the worker's part. */
export interface StudyBatch {
  /** Number of the first tune, from 1. */
  readonly first: number;
  /** UTF-8, each line closed. */
  readonly lines: Uint8Array;
}

/** What a worker is given: a batch, and the setup as JSON. */
export interface StudyTask extends StudyBatch {
  /** Shared memory for the results, if they fit. */
  readonly room: Uint8Array;
  readonly setup: string;
  /** Default all tunes. */
  readonly share?: StudyShare;
}

/** A tune of the input that could not be read. */
export interface StudyLineFailure {
  readonly number: number;
  readonly message: string;
}

/** What came of a batch. */
export interface StudiedBatch {
  /** Lines of output, one JSON value each: how many bytes of them are in the room, or their text. */
  readonly out: number | string;
  readonly tunes: number;
  readonly failures: readonly StudyLineFailure[];
  /** Milliseconds that it took. */
  readonly took: number;
}

/** As `readBatches` has it, which numbers the tunes of the batches that follow. */
const BLANK = /^[ \t\r]*$/u;

/** Studies the tunes of a batch in order; blank lines are passed over. Also runs in a worker. */
export function studyBatch({ first, lines, room, setup, share }: StudyTask): StudiedBatch {
  const begun = performance.now();
  const readSetup = makeStudySetup(JSON.parse(setup));
  const failures: StudyLineFailure[] = [];
  let out = '';
  let tunes = 0;
  let next = first;
  for (const text of bufferOf(lines).toString('utf8').split('\n')) {
    if (BLANK.test(text)) continue;
    const number = next;
    next += 1;
    if (!isInShare(number, share)) continue;
    const result = studyTune(text.replace(/\r$/u, ''), number, readSetup);
    if ('error' in result) {
      failures.push({ number: result.number, message: result.error.message });
    }
    out += `${JSON.stringify(result)}\n`;
    tunes += 1;
  }
  return { out: putInto(room, out), tunes, failures, took: performance.now() - begun };
}

/** Puts text into the room; gives it back where it does not fit. */
function putInto(room: Uint8Array, text: string): number | string {
  return Buffer.byteLength(text) > room.length ? text : bufferOf(room).write(text);
}

const bufferOf = ({ buffer, byteOffset, length }: Uint8Array): Buffer =>
  Buffer.from(buffer, byteOffset, length);
