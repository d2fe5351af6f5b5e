import { ReedplateError } from '@reedplate/pitch';
import { LARGEST_INPUT, requireSize } from '../decode-text.js';
import { bytesOf } from '../file-bytes.js';
import type { WarningList } from '../warning.js';

/** A MIDI file taken apart: how it counts time, and the bytes of its tracks. */
export interface MidiChunks {
  /** Ticks of ours (960 to the quarter) in one of the file's. */
  readonly ticksPerFileTick: number;
  /** Format of the file: 0 one track, 1 tracks at once, 2 tracks one after another. */
  readonly format: number;
  readonly tracks: readonly Uint8Array[];
}

const HEADER_LENGTH = 14;
const MOST_TRACKS = 1024;

/**
 * Takes a Standard MIDI File apart. Chunks of other kinds are passed over, as the standard asks; a
 * last track that is cut short is kept as far as it goes.
 *
 * @throws ReedplateError `MIDI_MALFORMED`, `FILE_TOO_LARGE`
 */
export function readChunks(input: Uint8Array | ArrayBuffer, warnings: WarningList): MidiChunks {
  const bytes = bytesOf(input);
  if (bytes === undefined) throw malformed(input, 'bytes (a Uint8Array or ArrayBuffer)', 0);
  const data = withoutWrapper(requireSize(bytes, bytes.byteLength));
  if (data.length < HEADER_LENGTH || nameAt(data, 0) !== 'MThd') {
    throw malformed(nameAt(data, 0), 'a file that begins with MThd and its six bytes', 0);
  }
  const view = new DataView(data.buffer, data.byteOffset, data.byteLength);
  const ticksPerFileTick = readDivision(view.getUint16(12));
  const tracks: Uint8Array[] = [];
  let at = 8 + Math.max(6, lengthAt(view, 4));
  while (at + 8 <= data.length) {
    const end = at + 8 + lengthAt(view, at + 4);
    if (nameAt(data, at) === 'MTrk') tracks.push(data.subarray(at + 8, end));
    if (end > data.length) warnings.add('data-malformed', { index: at });
    at = end;
  }
  if (tracks.length > MOST_TRACKS)
    throw malformed(tracks.length, `at most ${MOST_TRACKS} tracks`, at);
  if (tracks.length === 0) throw malformed('no track', 'at least one track (MTrk)', data.length);
  return { ticksPerFileTick, format: view.getUint16(8), tracks };
}

/** The MIDI file inside a RIFF file, or the bytes themselves. */
function withoutWrapper(data: Uint8Array): Uint8Array {
  const isWrapped = nameAt(data, 0) === 'RIFF' && nameAt(data, 8) === 'RMID';
  return isWrapped ? data.subarray(20) : data;
}

function nameAt(data: Uint8Array, at: number): string {
  return String.fromCharCode(...data.subarray(at, at + 4));
}

/** A length that no file read here can have is no slip at the end of a track. */
function lengthAt(view: DataView, at: number): number {
  const length = view.getUint32(at);
  if (length <= LARGEST_INPUT) return length;
  throw malformed(length, 'a length within the file', at);
}

const QUARTER = 960;
/** Where a file counts seconds and not beats, a quarter is taken to last half a second. */
const TICKS_A_SECOND = 2 * QUARTER;

function readDivision(division: number): number {
  const framesPerSecond = 256 - (division >> 8);
  const ticksPerFrame = division & 0xff;
  const scale =
    division < 0x8000 ? QUARTER / division : TICKS_A_SECOND / (framesPerSecond * ticksPerFrame);
  if (Number.isFinite(scale)) return scale;
  throw malformed(division, 'at least one tick to the quarter note', 12);
}

function malformed(value: unknown, expected: string, index: number): ReedplateError {
  return new ReedplateError({ code: 'MIDI_MALFORMED', value, expected, where: { index } });
}
