import { powerOfTwo, ReedplateError } from '@reedplate/pitch';
import { type ByteReader, DamagedData, readBytes } from './byte-reader.js';

/** An event of a track that matters to a line, at its time in the file's ticks. */
export type MidiEvent = { readonly tick: number } & (
  | {
      readonly kind: 'on';
      readonly channel: number;
      readonly pitch: number;
      readonly velocity: number;
    }
  | { readonly kind: 'off'; readonly channel: number; readonly pitch: number }
  | { readonly kind: 'program'; readonly channel: number; readonly program: number }
  /** −1 to 1 of the bend range. */
  | { readonly kind: 'bend'; readonly channel: number; readonly amount: number }
  | { readonly kind: 'bend-range'; readonly channel: number; readonly semitones: number }
  | { readonly kind: 'name' | 'marker'; readonly text: string }
  | { readonly kind: 'tempo'; readonly microsecondsPerQuarter: number }
  | { readonly kind: 'metre'; readonly numerator: number; readonly denominator: number }
  | { readonly kind: 'key'; readonly fifths: number; readonly isMinor: boolean }
);

/** A track's events, its end, and whether it was damaged. */
export interface TrackEvents {
  readonly events: readonly MidiEvent[];
  /** Tick of its last event. */
  readonly end: number;
  /** Byte where it could not be read on; undefined where all is well. */
  readonly damagedAt?: number;
}

/** Beyond this many ticks a time is damage, not music. */
const LATEST_TICK = 2 ** 36;

/** Most events read of one file: hours of music. */
const MOST_EVENTS = 500_000;

/**
 * Reads the events of a track up to its end or its first damage.
 *
 * @param most events that may still be read of the file
 * @throws ReedplateError `FILE_TOO_LARGE`
 */
function readTrack(data: Uint8Array, most: number): TrackEvents {
  const reader = readBytes(data);
  const events: MidiEvent[] = [];
  const state: TrackState = { status: 0, parameters: new Map() };
  let tick = 0;
  try {
    while (!reader.isDone()) {
      tick += reader.variable();
      if (tick > LATEST_TICK) throw new DamagedData('too late');
      const event = readEvent(reader, state);
      if (event === 'end') break;
      if (event !== undefined) events.push({ tick, ...event } as MidiEvent);
      if (events.length > most) throw tooManyEvents();
    }
    return { events, end: tick };
  } catch (error) {
    if (!(error instanceof DamagedData)) throw error;
    return { events, end: Math.min(tick, LATEST_TICK), damagedAt: reader.position() };
  }
}

/**
 * Reads every track of a file.
 *
 * @throws ReedplateError `FILE_TOO_LARGE`
 */
export function readTracks(tracks: readonly Uint8Array[]): readonly TrackEvents[] {
  let left = MOST_EVENTS;
  return tracks.map((data) => {
    const track = readTrack(data, left);
    left -= track.events.length;
    return track;
  });
}

function tooManyEvents(): ReedplateError {
  return new ReedplateError({
    code: 'FILE_TOO_LARGE',
    value: 'this MIDI file',
    expected: `at most ${MOST_EVENTS} events`,
  });
}

/** What later bytes of a track are read by. */
interface TrackState {
  /** Status byte that holds until the next (running status). */
  status: number;
  /** The registered parameter that data entry sets, by channel. */
  readonly parameters: Map<number, { readonly msb: number; readonly lsb: number }>;
}

type Untimed<Event> = Event extends MidiEvent ? Omit<Event, 'tick'> : never;
type EventBody = Untimed<MidiEvent> | 'end' | undefined;

function readEvent(reader: ByteReader, state: TrackState): EventBody {
  const first = reader.peek();
  if (first === 0xff) {
    reader.byte();
    return readMeta(reader.byte(), reader.bytes(reader.variable()));
  }
  if (first === 0xf0 || first === 0xf7) {
    reader.byte();
    reader.bytes(reader.variable());
    return undefined;
  }
  if (first >= 0xf0) throw new DamagedData('no event of a file');
  if (first >= 0x80) state.status = reader.byte();
  if (state.status === 0) throw new DamagedData('data without a status');
  return readChannelEvent(reader, state);
}

function readChannelEvent(reader: ByteReader, state: TrackState): EventBody {
  const channel = state.status & 0x0f;
  const [a, b] = readData(reader, state.status >> 4);
  switch (state.status >> 4) {
    case 0x8:
      return { kind: 'off', channel, pitch: a };
    case 0x9:
      if (b === 0) return { kind: 'off', channel, pitch: a };
      return { kind: 'on', channel, pitch: a, velocity: b };
    case 0xb:
      return readController(channel, a, b, state);
    case 0xc:
      return { kind: 'program', channel, program: a + 1 };
    case 0xe:
      return { kind: 'bend', channel, amount: (b * 128 + a - 8192) / 8192 };
    default:
      return undefined;
  }
}

function readData(reader: ByteReader, kind: number): readonly [number, number] {
  const first = reader.byte();
  const second = kind === 0xc || kind === 0xd ? 0 : reader.byte();
  if (first > 0x7f || second > 0x7f) throw new DamagedData('data above 127');
  return [first, second];
}

const DATA_ENTRY = 6;
const PARAMETER_LSB = 100;
const PARAMETER_MSB = 101;

/** Of all controllers only the bend range matters: registered parameter 0. */
function readController(
  channel: number,
  controller: number,
  value: number,
  { parameters }: TrackState,
): EventBody {
  const parameter = parameters.get(channel) ?? { msb: 0x7f, lsb: 0x7f };
  if (controller === PARAMETER_MSB) parameters.set(channel, { ...parameter, msb: value });
  if (controller === PARAMETER_LSB) parameters.set(channel, { ...parameter, lsb: value });
  const isBendRange = parameter.msb === 0 && parameter.lsb === 0;
  if (controller !== DATA_ENTRY || !isBendRange) return undefined;
  return { kind: 'bend-range', channel, semitones: value };
}

function readMeta(type: number, data: Uint8Array): EventBody {
  const [a = 0, b = 0, c = 0] = data;
  switch (type) {
    case 0x03:
      return { kind: 'name', text: decode(data) };
    case 0x06:
      return { kind: 'marker', text: decode(data) };
    case 0x2f:
      return 'end';
    case 0x51:
      return { kind: 'tempo', microsecondsPerQuarter: a * 65536 + b * 256 + c };
    case 0x58:
      return { kind: 'metre', numerator: a, denominator: powerOfTwo(b) };
    case 0x59:
      return { kind: 'key', fifths: a > 127 ? a - 256 : a, isMinor: b === 1 };
    default:
      return undefined;
  }
}

/** Text of a file that does not say its encoding: UTF-8 where it is, else Latin 1. */
function decode(data: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(data).trim();
  } catch {
    return new TextDecoder('latin1').decode(data).trim();
  }
}
