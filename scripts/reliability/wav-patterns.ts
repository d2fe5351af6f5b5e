import type { Pattern } from './pattern.js';

const HEAD = 12;
const FORMAT = 24;
/** Mono, 44,100 samples a second, 16 bits. */
const PLAIN = [1, 0, 1, 0, 0x44, 0xac, 0, 0, 0x88, 0x58, 1, 0, 2, 0, 16, 0];
const CHUNKS = ['LIST', 'cue ', 'smpl', 'bext', 'fact', 'junk', 'data', 'fmt ', 'iXML', '_PMX'];

function ascii(text: string): readonly number[] {
  return [...text].map((letter) => letter.charCodeAt(0));
}

function littleEndian(value: number): readonly number[] {
  return [value & 255, (value >> 8) & 255, (value >> 16) & 255, (value >> 24) & 255];
}

/** A WAV file that is filled up with one thing again and again. */
function wavOf(size: number, unit: readonly number[], inside: boolean): Uint8Array {
  const bytes = new Uint8Array(Math.max(size, HEAD + FORMAT + 16));
  bytes.set([...ascii('RIFF'), ...littleEndian(bytes.length - 8), ...ascii('WAVE')]);
  bytes.set([...ascii('fmt '), ...littleEndian(16), ...PLAIN], HEAD);
  let at = HEAD + FORMAT;
  if (inside) {
    bytes.set([...ascii('data'), ...littleEndian(bytes.length - at - 8)], at);
    at += 8;
  }
  for (; at + unit.length <= bytes.length; at += unit.length) bytes.set(unit, at);
  return bytes;
}

const chunk = (id: string, length: number): readonly number[] => [
  ...ascii(id),
  ...littleEndian(length),
  ...Array.from({ length }, (_, at) => at),
];

/** Sound that repeats, and chunks of every kind that repeat. */
export const WAV_PATTERNS: readonly Pattern[] = [
  ...CHUNKS.flatMap((id) =>
    [0, 32].map((length) => ({
      name: `${id.trim()} chunks of ${length} bytes`,
      ofSize: (size: number) => wavOf(size, chunk(id, length), false),
    })),
  ),
  ...[0, 127, 255].map((byte) => ({
    name: `samples of bytes ${byte}`,
    ofSize: (size: number) => wavOf(size, [byte, byte], true),
  })),
];
