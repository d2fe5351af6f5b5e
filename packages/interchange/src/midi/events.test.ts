import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { type MidiEvent, readTracks, type TrackEvents } from './events.js';
import { END, message, text } from './midi-bytes.fixture.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

function read(...bytes: readonly (readonly number[])[]): TrackEvents {
  const [track] = readTracks([Uint8Array.from(bytes.flat())]);
  if (track === undefined) throw new Error('no track');
  return track;
}

const events = (...bytes: readonly (readonly number[])[]): readonly MidiEvent[] =>
  read(...bytes, END).events;

describe('readTracks, events', () => {
  test.each([
    ['a beginning', [0x93, 60, 64], { kind: 'on', channel: 3, pitch: 60, velocity: 64 }],
    ['an end', [0x83, 60, 64], { kind: 'off', channel: 3, pitch: 60 }],
    ['a beginning of no force', [0x90, 60, 0], { kind: 'off', channel: 0, pitch: 60 }],
    ['a program', [0xcf, 22], { kind: 'program', channel: 15, program: 23 }],
    ['no bend', [0xe0, 0, 64], { kind: 'bend', channel: 0, amount: 0 }],
    ['a bend all the way down', [0xe0, 0, 0], { kind: 'bend', channel: 0, amount: -1 }],
    ['a bend half way up', [0xe0, 0, 96], { kind: 'bend', channel: 0, amount: 0.5 }],
  ])('readTracks reads %s', (_, data, event) => {
    expect(events(message(5, ...data))).toEqual([{ tick: 5, ...event }]);
  });

  test.each([
    ['a name', text(3, 'Lead'), { kind: 'name', text: 'Lead' }],
    ['a marker', text(6, 'G7'), { kind: 'marker', text: 'G7' }],
    ['a text in UTF-8', text(3, 'Größe'), { kind: 'name', text: 'Größe' }],
    ['a text in Latin 1', [0, 0xff, 3, 1, 0xe9], { kind: 'name', text: 'é' }],
    ['a tempo', [0, 0xff, 0x51, 3, 7, 0xa1, 0x20], { kind: 'tempo', microsecondsPerQuarter: 5e5 }],
    ['a metre', [0, 0xff, 0x58, 4, 12, 3, 36, 8], { kind: 'metre', numerator: 12, denominator: 8 }],
    ['a key with sharps', [0, 0xff, 0x59, 2, 3, 0], { kind: 'key', fifths: 3, isMinor: false }],
    ['a key with flats', [0, 0xff, 0x59, 2, 0xfd, 1], { kind: 'key', fifths: -3, isMinor: true }],
  ])('readTracks reads %s', (_, data, event) => {
    expect(events(data)).toEqual([{ tick: 0, ...event }]);
  });

  test.each([
    ['key pressure', [0xa0, 60, 1]],
    ['channel pressure', [0xd0, 1]],
    ['a controller', [0xb0, 7, 100]],
    ['system exclusive data', [0xf0, 3, 1, 2, 0xf7]],
    ['escaped data', [0xf7, 2, 1, 2]],
    ['a meta event of any other kind', [0xff, 0x7f, 2, 1, 2]],
    ['lyrics', [0xff, 5, 2, 65, 66]],
  ])('readTracks passes over %s, and counts its time', (_, data) => {
    expect(events(message(7, ...data), message(5, 0x90, 60, 1))).toEqual([
      { tick: 12, kind: 'on', channel: 0, pitch: 60, velocity: 1 },
    ]);
  });

  test('readTracks reads the range of bends, registered parameter 0, and no other', () => {
    const range = (parameter: number): readonly (readonly number[])[] => [
      message(0, 0xb2, 101, 0),
      message(0, 0xb2, 100, parameter),
      message(0, 0xb2, 6, 12),
    ];
    expect(events(...range(0))).toEqual([
      { tick: 0, kind: 'bend-range', channel: 2, semitones: 12 },
    ]);
    expect(events(...range(1))).toEqual([]);
    expect(events(message(0, 0xb2, 6, 12))).toEqual([]);
  });

  test('readTracks stops at the end of the track, whatever comes after', () => {
    const { events: found, end, damagedAt } = read(message(9, 0x90, 60, 1), END, [1, 2, 3]);
    expect([found.length, end, damagedAt]).toEqual([1, 9, undefined]);
  });
});

describe('readTracks, running status', () => {
  const notes = fc.array(
    fc.record({
      delta: fc.nat({ max: 20_000 }),
      channel: fc.nat({ max: 15 }),
      pitch: fc.nat({ max: 127 }),
      isOn: fc.boolean(),
      velocity: fc.integer({ min: 1, max: 127 }),
    }),
    { maxLength: 40 },
  );

  test('readTracks reads the same events with running status as without', () => {
    fc.assert(
      fc.property(notes, (played) => {
        let status = 0;
        const full = played.map(({ delta, channel, pitch, isOn, velocity }) =>
          message(delta, (isOn ? 0x90 : 0x80) + channel, pitch, velocity),
        );
        const running = played.map(({ delta, channel, pitch, isOn, velocity }) => {
          const own = (isOn ? 0x90 : 0x80) + channel;
          const isKept = own === status;
          status = own;
          return message(delta, ...(isKept ? [] : [own]), pitch, velocity);
        });
        const expected = events(...full);
        expect(expected.length).toBe(played.length);
        expect(events(...running)).toEqual(expected);
      }),
    );
  });

  test('readTracks keeps the status over meta events and system exclusive data', () => {
    const found = events(
      message(0, 0x91, 60, 1),
      text(3, 'x'),
      message(0, 0xf0, 0),
      message(1, 62, 1),
    );
    expect(found.at(-1)).toEqual({ tick: 1, kind: 'on', channel: 1, pitch: 62, velocity: 1 });
  });
});

describe('readTracks, damage', () => {
  const good = message(4, 0x90, 60, 64);

  test.each([
    ['data without a status', [message(0, 60, 64)], 0],
    ['a status of the wire, not of files', [good, message(0, 0xf8)], 1],
    ['data above 127', [good, message(0, 0x90, 0x80, 64)], 1],
    ['an event cut short', [good, [0, 0x90]], 1],
    ['a time of five bytes', [good, [0x81, 0x81, 0x81, 0x81, 0x00, 0x90, 60, 0]], 1],
    ['text longer than the track', [good, [0, 0xff, 3, 50, 65]], 1],
    ['a text of 256 MB', [good, [0, 0xff, 3, 0xff, 0xff, 0xff, 0x7f]], 1],
  ])('readTracks keeps what comes before %s, and says where it stopped', (_, bytes, kept) => {
    const { events: found, damagedAt } = read(...bytes);
    expect(found.length).toBe(kept);
    expect(damagedAt).toBeGreaterThan(0);
    expect(damagedAt).toBeLessThanOrEqual(bytes.flat().length);
  });

  test('readTracks takes a time of thousands of years for damage', () => {
    const late = Array.from({ length: 600 }, () => message(2 ** 28 - 1, 0x90, 60, 64));
    const { end, damagedAt } = read(...late);
    expect(end).toBe(2 ** 36);
    expect(damagedAt).toBeDefined();
  });

  test('readTracks refuses more than 500,000 events in all tracks together', () => {
    const track = Uint8Array.from(Array.from({ length: 250_001 }, () => [0, 0xc0, 1]).flat());
    expect(() => readTracks([track, track])).toThrowError(
      expect.objectContaining({ code: 'FILE_TOO_LARGE' }),
    );
    expect(readTracks([track]).length).toBe(1);
  });

  test('readTracks gives events in order of time, for arbitrary bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        const [track] = readTracks([bytes]);
        const ticks = track?.events.map(({ tick }) => tick) ?? [];
        expect(ticks).toEqual([...ticks].sort((a, b) => a - b));
        expect(track?.end).toBeGreaterThanOrEqual(ticks.at(-1) ?? 0);
      }),
      { numRuns: 500 },
    );
  });
});
