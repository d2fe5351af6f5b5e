import type { Pattern } from './pattern.js';

type Bytes = readonly number[];

/** Bytes of a chunk: name, length, data. */
function chunk(name: string, data: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(8 + data.length);
  bytes.set(new TextEncoder().encode(name));
  new DataView(bytes.buffer).setUint32(4, data.length);
  bytes.set(data, 8);
  return bytes;
}

function join(parts: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}

/** A file of tracks, 96 ticks to the quarter. */
export function midiOf(tracks: readonly Uint8Array[]): Uint8Array {
  const head = Uint8Array.of(0, 1, tracks.length >> 8, tracks.length & 255, 0, 96);
  return join([chunk('MThd', head), ...tracks.map((data) => chunk('MTrk', data))]);
}

function repeated(unit: Bytes | ((at: number) => Bytes), bytes: number): Uint8Array {
  const all: number[] = [];
  for (let at = 0; all.length < bytes; at += 1) {
    all.push(...(typeof unit === 'function' ? unit(at) : unit));
  }
  return Uint8Array.from(all);
}

const events = (name: string, unit: Bytes | ((at: number) => Bytes)): Pattern => ({
  name,
  ofSize: (bytes) => midiOf([repeated(unit, bytes)]),
});
const meta = (type: number, text: string): Bytes => [
  0,
  0xff,
  type,
  text.length,
  ...Buffer.from(text),
];
const ON = [1, 0x90, 60, 64];
const OFF = [1, 0x80, 60, 0];

/** Notes that sound while the wheel is turned from one semitone to another. */
const heldThroughBends: Pattern = {
  name: 'notes held through bends',
  ofSize: (bytes) => {
    const on = repeated((at) => [0, 0x90, at % 128, 64], bytes / 3);
    const bends = repeated((at) => [96, 0xe0, 0, at % 2 === 0 ? 0x40 : 0x7f], bytes / 3);
    return midiOf([join([on, bends, repeated((at) => [0, 0x80, at % 128, 0], bytes / 3)])]);
  },
};

/** MIDI files that repeat one thing. */
export const MIDI_PATTERNS: readonly Pattern[] = [
  events('notes', [...ON, ...OFF]),
  events('notes without an end', ON),
  events('ends without a note', OFF),
  events('notes of all channels', (at) => [
    1,
    0x90 + (at % 16),
    60,
    64,
    1,
    0x80 + (at % 16),
    60,
    0,
  ]),
  events('notes under a running status', (at) => (at === 0 ? ON : [1, 60, at % 2 === 0 ? 64 : 0])),
  events('notes of no length', [0, 0x90, 60, 64, 0, 0x80, 60, 0]),
  events('notes far apart', [0xff, 0x7f, 0x90, 60, 64, 1, 0x80, 60, 0]),
  events('bends', (at) => [1, 0xe0, at % 128, 0x40]),
  events('bends and notes', [...ON, 1, 0xe0, 0, 0x50, ...OFF, 1, 0xe0, 0, 0x30]),
  heldThroughBends,
  events('bend ranges', [0, 0xb0, 101, 0, 0, 0xb0, 100, 0, 0, 0xb0, 6, 12]),
  events('programs', (at) => [0, 0xc0, at % 128]),
  events('chord markers', (at) => [96, ...meta(6, at % 2 === 0 ? 'G7' : 'C7').slice(1)]),
  events('section markers', meta(6, 'A')),
  events('names', meta(3, 'Tune')),
  events('tempos', (at) => [1, 0xff, 0x51, 3, 7, at % 256, 0]),
  events('metres', (at) => [1, 0xff, 0x58, 4, 1 + (at % 7), 2, 24, 8]),
  events('keys', (at) => [1, 0xff, 0x59, 2, at % 7, 0]),
  events('system messages', [0, 0xf0, 4, 1, 2, 3, 0xf7]),
  events('unknown events', [0, 0xff, 0x60, 1, 0]),
  events('pressure', [0, 0xa0, 60, 1, 0, 0xd0, 3]),
  {
    name: 'tracks',
    ofSize: (bytes) => {
      const count = Math.min(1000, Math.ceil(bytes / 30));
      const one = repeated([...ON, ...OFF], bytes / count - 8);
      return midiOf(Array.from({ length: count }, () => one));
    },
  },
];
