import { readInFile } from '@reedplate/files';
import type { Piece } from '@reedplate/interchange';
import type { Harp, PlayerLike } from '@reedplate/layout';
import { lineFromSeconds } from '@reedplate/line';
import { type HeardNotes, hearNotes, readWav } from '@reedplate/listen';
import { ReedplateError } from '@reedplate/pitch';
import type { RecordingWords } from './recording-options.js';
import { readTempoOption } from './tempo-option.js';

/** Who plays a recording. */
export interface Recorded {
  readonly harp?: Harp;
  readonly level?: PlayerLike;
}

/**
 * What is heard in a recording.
 *
 * @throws ReedplateError `SOUND_MALFORMED`, `SOUND_INVALID`, with the file
 */
export function hearRecording(bytes: Uint8Array, file: string, recorded: Recorded): HeardNotes {
  return readInFile(file, () => hearNotes(readWav(bytes), recorded));
}

/**
 * What is heard, in bars and beats, as a piece that was read.
 *
 * @throws ReedplateError `USAGE` without a tempo, or for what is no second of the recording
 */
export function pieceOfHeard(
  { notes, seconds }: HeardNotes,
  file: string,
  words: RecordingWords,
): Piece {
  const { tempo } = readTempoOption(words);
  if (tempo === undefined) {
    const expected = 'also --tempo, in felt beats a minute: a recording does not say it';
    throw new ReedplateError({ code: 'USAGE', value: file, expected });
  }
  const from =
    words.barOne === undefined ? (notes[0]?.start ?? 0) : readSecond(words.barOne, seconds);
  const line = lineFromSeconds(
    notes.filter(({ start }) => start >= from),
    { tempo, from },
  );
  return { line, parts: [{ name: '', line }], warnings: [] };
}

function readSecond(word: string, seconds: number): number {
  const second = Number(word);
  if (word.trim() !== '' && second >= 0 && second < seconds) return second;
  const expected = `--bar-one as a second of the recording, from 0 to ${seconds.toFixed(2)}`;
  throw new ReedplateError({ code: 'USAGE', value: word, expected });
}

/** What was heard, and where bar 1 lies, in a sentence. */
export function sayRecording({ notes, reference }: HeardNotes, { barOne }: RecordingWords): string {
  const from = barOne ?? `${(notes[0]?.start ?? 0).toFixed(2)}`;
  const why =
    barOne === undefined ? ', where the first note begins; another second: --bar-one' : '';
  return `heard by its sound: ${notes.length} notes, A4 at ${reference.toFixed(1)} Hz, bar 1 from second ${from}${why}`;
}
