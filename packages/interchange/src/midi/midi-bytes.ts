/** What a file of ours holds, as the Standard MIDI File format (1.1) names it. */
export type MidiEvent =
  | { readonly type: 'trackName' | 'marker'; readonly text: string }
  | { readonly type: 'setTempo'; readonly microsecondsPerBeat: number }
  | {
      readonly type: 'timeSignature';
      readonly numerator: number;
      /** A power of two. */
      readonly denominator: number;
    }
  | { readonly type: 'keySignature'; readonly key: number; readonly scale: 0 | 1 }
  | { readonly type: 'endOfTrack' }
  | {
      readonly type: 'noteOn' | 'noteOff';
      readonly channel: number;
      readonly noteNumber: number;
      readonly velocity: number;
    }
  | {
      readonly type: 'controller';
      readonly channel: number;
      readonly controllerType: number;
      readonly value: number;
    }
  | { readonly type: 'programChange'; readonly channel: number; readonly programNumber: number }
  | {
      readonly type: 'pitchBend';
      readonly channel: number;
      /** From -8192 to 8191; 0 is at rest. */
      readonly value: number;
    };

/** An event, and the ticks since the one before it. */
export interface TrackEvent {
  readonly deltaTime: number;
  readonly event: MidiEvent;
}

/** MIDI clocks between clicks of a metronome, and thirty-second notes in a quarter: the usual ones. */
const CLOCKS = [24, 8] as const;
/** The wheel at rest. */
const WHEEL_CENTRE = 0x2000;

/** A file of format 1. */
export function midiBytes(
  tracks: readonly (readonly TrackEvent[])[],
  ticksPerQuarter: number,
): Uint8Array<ArrayBuffer> {
  const head = [
    ...bigEndian(1, 2),
    ...bigEndian(tracks.length, 2),
    ...bigEndian(ticksPerQuarter, 2),
  ];
  const chunks = tracks.map((track) =>
    chunk(
      'MTrk',
      track.flatMap(({ deltaTime, event }) => [...variableLength(deltaTime), ...eventBytes(event)]),
    ),
  );
  return Uint8Array.from([chunk('MThd', head), ...chunks].flat());
}

function chunk(type: string, bytes: readonly number[]): readonly number[] {
  return [...utf8(type), ...bigEndian(bytes.length, 4)].concat(bytes);
}

function eventBytes(event: MidiEvent): readonly number[] {
  switch (event.type) {
    case 'trackName':
      return meta(0x03, utf8(event.text));
    case 'marker':
      return meta(0x06, utf8(event.text));
    case 'endOfTrack':
      return meta(0x2f, []);
    case 'setTempo':
      return meta(0x51, bigEndian(event.microsecondsPerBeat, 3));
    case 'timeSignature':
      return meta(0x58, [event.numerator, 31 - Math.clz32(event.denominator), ...CLOCKS]);
    case 'keySignature':
      return meta(0x59, [event.key & 0xff, event.scale]);
    case 'noteOff':
      return [0x80 | event.channel, event.noteNumber, event.velocity];
    case 'noteOn':
      return [0x90 | event.channel, event.noteNumber, event.velocity];
    case 'controller':
      return [0xb0 | event.channel, event.controllerType, event.value];
    case 'programChange':
      return [0xc0 | event.channel, event.programNumber];
    case 'pitchBend': {
      const place = WHEEL_CENTRE + event.value;
      return [0xe0 | event.channel, place & 0x7f, place >> 7];
    }
  }
}

function meta(type: number, bytes: readonly number[]): readonly number[] {
  return [0xff, type, ...variableLength(bytes.length), ...bytes];
}

function utf8(text: string): readonly number[] {
  return [...new TextEncoder().encode(text)];
}

function bigEndian(value: number, count: number): readonly number[] {
  return Array.from({ length: count }, (_, at) => (value >> (8 * (count - 1 - at))) & 0xff);
}

/** Seven bits a byte, the highest first; all but the last have their top bit set. */
function variableLength(value: number): readonly number[] {
  const high = value >> 7;
  const before = high === 0 ? [] : variableLength(high).map((byte) => byte | 0x80);
  return [...before, value & 0x7f];
}
