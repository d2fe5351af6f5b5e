import { requireSound, type Sound } from '../sound.js';

/** Bytes before the samples, and what they say of them. */
const HEAD = 44;
const WHOLE_NUMBERS = 1;
const BYTES = 2;
const BITS = 16;
const LARGEST = 2 ** 15 - 1;

/**
 * Writes a sound as a WAV file: one channel, whole numbers of 16 bits. What is beyond -1 and 1 is held there.
 * Microsoft and IBM, Multimedia Programming Interface and Data Specifications 1.0 (1991), chapter 3: values from
 * memory.
 *
 * @throws ReedplateError `SOUND_INVALID`
 * @example
 * ```ts
 * import { readWav, writeWav } from '@reedplate/listen';
 *
 * const samples = Float32Array.from([0, 0.5, -0.5, 1]);
 * const file = writeWav({ sampleRate: 44_100, samples });
 * file.length; // => 52
 * readWav(file).sampleRate; // => 44100
 * writeWav({ sampleRate: 1, samples }); // throws SOUND_INVALID
 * ```
 */
export function writeWav(sound: Sound): Uint8Array & { readonly buffer: ArrayBuffer } {
  const { sampleRate, samples } = requireSound(sound);
  const buffer = new ArrayBuffer(HEAD + samples.length * BYTES);
  const file = new DataView(buffer);
  writeHead(file, Math.round(sampleRate), samples.length * BYTES);
  for (let at = 0; at < samples.length; at += 1) {
    const sample = Math.max(-1, Math.min(1, samples[at] as number));
    file.setInt16(HEAD + at * BYTES, Math.round(sample * LARGEST), true);
  }
  return new Uint8Array(buffer) as Uint8Array & { readonly buffer: ArrayBuffer };
}

function writeHead(file: DataView, sampleRate: number, length: number): void {
  writeText(file, 0, 'RIFF');
  file.setUint32(4, HEAD - 8 + length, true);
  writeText(file, 8, 'WAVEfmt ');
  file.setUint32(16, 16, true);
  file.setUint16(20, WHOLE_NUMBERS, true);
  file.setUint16(22, 1, true);
  file.setUint32(24, sampleRate, true);
  file.setUint32(28, sampleRate * BYTES, true);
  file.setUint16(32, BYTES, true);
  file.setUint16(34, BITS, true);
  writeText(file, 36, 'data');
  file.setUint32(40, length, true);
}

function writeText(file: DataView, at: number, text: string): void {
  for (const [index, letter] of [...text].entries()) {
    file.setUint8(at + index, letter.charCodeAt(0));
  }
}
