import type { Piece } from '@reedplate/interchange';
import type { Line } from '@reedplate/line';
import type { Session } from '../src/session.js';

const FORMATS = { json: 'application/json', midi: 'audio/midi', musicxml: 'application/xml' };

/** Formats that a take is saved in. */
export type TakeFormat = keyof typeof FORMATS;

const ENDINGS: Readonly<Record<TakeFormat, string>> = {
  json: 'json',
  midi: 'mid',
  musicxml: 'musicxml',
};

/** Saves a take with its chords and, in notation, its tab. What writes files is loaded when it is needed. */
export async function saveTake(line: Line, session: Session, format: TakeFormat): Promise<void> {
  const { writePiece, quantiseLine } = await import('@reedplate/interchange');
  const { song, harp, level } = session;
  const notes = format === 'musicxml' ? quantiseLine(line) : line;
  const sheet = { line: notes, key: song.key, chart: song };
  const written =
    format === 'json' ? JSON.stringify(line) : writePiece(sheet, format, { harp, level });
  const url = URL.createObjectURL(new Blob([written], { type: FORMATS[format] }));
  const link = document.createElement('a');
  Object.assign(link, { href: url, download: `take.${ENDINGS[format]}` });
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 1000);
}

/**
 * Reads a take from a file of any format but sound.
 *
 * @throws ReedplateError for what cannot be read
 */
export async function openTake(file: File): Promise<Piece> {
  const { readPiece } = await import('@reedplate/interchange');
  return readPiece(new Uint8Array(await file.arrayBuffer()));
}
