import fc from 'fast-check';
import { type MidiEvent as OtherEvent, parseMidi, writeMidi } from 'midi-file';
import { expect, test } from 'vitest';
import { published } from '../../../../test/sources/published.js';
import { type MidiEvent, midiBytes, type TrackEvent } from './midi-bytes.js';

const channel = fc.nat({ max: 15 });
const seven = fc.nat({ max: 127 });
const events: fc.Arbitrary<MidiEvent> = fc.oneof(
  fc.record({
    type: fc.constantFrom('trackName' as const, 'marker' as const),
    text: fc.string({ unit: 'binary-ascii', maxLength: 300 }),
  }),
  fc.record({
    type: fc.constant('setTempo' as const),
    microsecondsPerBeat: fc.nat({ max: 2 ** 24 - 1 }),
  }),
  fc.record({
    type: fc.constant('timeSignature' as const),
    numerator: fc.integer({ min: 1, max: 32 }),
    denominator: fc.constantFrom(1, 2, 4, 8, 16, 32, 64),
  }),
  fc.record({
    type: fc.constant('keySignature' as const),
    key: fc.integer({ min: -7, max: 7 }),
    scale: fc.constantFrom(0 as const, 1 as const),
  }),
  fc.record({
    type: fc.constantFrom('noteOn' as const, 'noteOff' as const),
    ...{ channel, noteNumber: seven, velocity: seven },
  }),
  fc.record({
    type: fc.constant('controller' as const),
    ...{ channel, controllerType: seven, value: seven },
  }),
  fc.record({ type: fc.constant('programChange' as const), channel, programNumber: seven }),
  fc.record({
    type: fc.constant('pitchBend' as const),
    ...{ channel, value: fc.integer({ min: -8192, max: 8191 }) },
  }),
);
const track = fc.array(
  fc.record({ deltaTime: fc.oneof(seven, fc.nat({ max: 2 ** 28 - 1 })), event: events }),
  { maxLength: 20 },
);

/** An event as the other writer wants it. */
const flat = ({ deltaTime, event }: TrackEvent): OtherEvent =>
  ({ deltaTime, metronome: 24, thirtyseconds: 8, ...event }) as OtherEvent;

published('midi-readers', 'every event that we write', () => {
  test('midiBytes writes the bytes that midi-file writes', () => {
    fc.assert(
      fc.property(fc.array(track, { maxLength: 4 }), (tracks) => {
        const header = { format: 1, numTracks: tracks.length, ticksPerBeat: 960 } as const;
        const expected = writeMidi({ header, tracks: tracks.map((each) => each.map(flat)) });
        expect([...midiBytes(tracks, 960)]).toEqual(expected);
      }),
    );
  });

  test('midiBytes writes text in UTF-8, with its length in bytes', () => {
    const name: TrackEvent = { deltaTime: 0, event: { type: 'trackName', text: 'Größe ♭' } };
    const bytes = midiBytes([[name, { deltaTime: 0, event: { type: 'endOfTrack' } }]], 960);
    expect(new TextDecoder().decode(bytes)).toContain('Größe ♭');
    expect(parseMidi(bytes).tracks[0]?.map(({ type }) => type)).toEqual([
      ...['trackName', 'endOfTrack'],
    ]);
  });
});
