import { ReedplateError } from '@reedplate/pitch';
import { requireSound, type Sound } from '../sound.js';
import { mixedSamples, sampleFormatOf } from './samples.js';

/**
 * Reads a WAV file: whole numbers of 8 to 32 bits or floating point of 32 or 64, any rate, its channels mixed
 * to one. What else the file holds is passed over. Microsoft and IBM, Multimedia Programming Interface and Data
 * Specifications 1.0 (1991), chapter 3, and Microsoft's WAVE_FORMAT_EXTENSIBLE: values from memory.
 *
 * @param bytes a file, as `fetch` or a file input gives it
 * @throws ReedplateError `SOUND_MALFORMED` for what is no such file, with how to make one; `SOUND_INVALID` for
 * samples that are no numbers, or a rate that no recorder has
 * @example
 * ```ts
 * import { readWav } from '@reedplate/listen';
 *
 * readWav(new Uint8Array([1, 2, 3])); // throws SOUND_MALFORMED
 * ```
 */
export function readWav(bytes: Uint8Array | ArrayBuffer): Sound {
  const file = viewOf(bytes);
  if (textAt(file, 0) !== 'RIFF' || textAt(file, 8) !== 'WAVE')
    throw malformed(`${file.byteLength} bytes`);
  const { format, data } = chunksOf(file);
  if (data === undefined || format === undefined || format.byteLength < SHORTEST_FORMAT) {
    throw malformed('a WAV file without sound');
  }
  const channels = format.getUint16(2, true);
  const kept = sampleFormatOf(format);
  if (kept === undefined || !(channels >= 1 && channels <= MOST_CHANNELS)) {
    throw malformed('a WAV file of another kind of samples');
  }
  const samples = mixedSamples(data, kept, channels);
  return Object.freeze(requireSound({ sampleRate: format.getUint32(4, true), samples }));
}

const SHORTEST_FORMAT = 16;
const MOST_CHANNELS = 8;
const CHUNK_HEAD = 8;
const FIRST_CHUNK = 12;

function viewOf(bytes: unknown): DataView {
  if (ArrayBuffer.isView(bytes))
    return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (Object.prototype.toString.call(bytes) === '[object ArrayBuffer]')
    return new DataView(bytes as ArrayBuffer);
  throw malformed(bytes);
}

function textAt(file: DataView, at: number): string {
  if (at + 4 > file.byteLength) return '';
  return String.fromCharCode(...[0, 1, 2, 3].map((offset) => file.getUint8(at + offset)));
}

/** The first chunk that says how samples are kept, and the first that holds them, cut off where the file ends. */
function chunksOf(file: DataView) {
  let format: DataView | undefined;
  let data: DataView | undefined;
  let at = FIRST_CHUNK;
  while (at + CHUNK_HEAD <= file.byteLength && (format === undefined || data === undefined)) {
    const id = textAt(file, at);
    const from = at + CHUNK_HEAD;
    const length = Math.min(file.getUint32(at + 4, true), file.byteLength - from);
    const chunk = new DataView(file.buffer, file.byteOffset + from, length);
    if (id === 'fmt ') format ??= chunk;
    if (id === 'data') data ??= chunk;
    // Chunks begin at even places.
    at = from + length + (length % 2);
  }
  return { format, data };
}

function malformed(value: unknown): ReedplateError {
  const expected =
    'a WAV file of whole numbers or floating point; a recorder or any sound editor saves one';
  return new ReedplateError({ code: 'SOUND_MALFORMED', value, expected });
}
