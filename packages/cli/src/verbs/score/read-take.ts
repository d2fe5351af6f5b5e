import { type Piece, sayPartChoice } from '@reedplate/interchange';
import type { Harp } from '@reedplate/layout';
import { isRecording } from '../../shared/is-recording.js';
import { type PartWords, readPart } from '../../shared/part-option.js';
import { readPieceBytes } from '../../shared/piece-file.js';
import { type RecordingWords, refuseRecordingWords } from '../../shared/recording-options.js';
import type { Terminal } from '../../terminal.js';

/** A take that was read, and what is said of how. */
export interface ReadTake {
  readonly piece: Piece;
  /** Whether what it holds was played on a harp for certain. */
  readonly playedOnHarp: boolean;
  readonly said: string | undefined;
}

/** Reads a take from a file of any format, or hears it in a recording. */
export async function readTake(
  file: string,
  words: PartWords & RecordingWords,
  terminal: Terminal,
  harp: { readonly harp?: Harp },
): Promise<ReadTake> {
  const bytes = terminal.readBytes(file);
  if (!isRecording(bytes)) {
    refuseRecordingWords(words, `it with a recording alone: ${file} is none`);
    const { piece, format } = readPieceBytes(bytes, file, terminal, {
      ...harp,
      ...readPart(words),
    });
    return { piece, playedOnHarp: format === 'tab', said: sayPart(piece) };
  }
  // Hearing is loaded where there is something to hear.
  const { hearRecording, pieceOfHeard, sayRecording } = await import('../../shared/recording.js');
  const heard = hearRecording(bytes, file, harp);
  return {
    piece: pieceOfHeard(heard, file, words),
    playedOnHarp: false,
    said: sayRecording(heard, words),
  };
}

/** Which part of a file is judged, and why, where it has several. */
function sayPart({ parts, choice }: Piece): string | undefined {
  if (choice === undefined || parts.length < 2) return undefined;
  return `judged is ${sayPartChoice(choice)}; another: --part`;
}
