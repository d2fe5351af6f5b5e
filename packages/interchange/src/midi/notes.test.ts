import { centsAt, makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { END, message, midiFile } from './midi-bytes.fixture.js';
import { readMidi } from './read-midi.js';
import { writeMidi } from './write-midi.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

/** A stroke or release of a pitch, so many ticks after the one before. */
interface Stroke {
  readonly delta: number;
  readonly pitch: number;
  readonly isOn: boolean;
}

const strokes: fc.Arbitrary<readonly Stroke[]> = fc.array(
  fc.record({
    delta: fc.nat({ max: 200 }),
    pitch: fc.integer({ min: 60, max: 62 }),
    isOn: fc.boolean(),
  }),
  { minLength: 1, maxLength: 30 },
);

const toTrack = (played: readonly Stroke[]): readonly number[] => [
  ...played.flatMap(({ delta, pitch, isOn }) => message(delta, isOn ? 0x90 : 0x80, pitch, 64)),
  ...END,
];

/** What strokes sound, worked out another way: each release ends the pitch's oldest stroke. */
function modelOf(played: readonly Stroke[]): readonly (readonly number[])[] {
  let now = 0;
  const timed = played.map((stroke) => {
    now += stroke.delta;
    return { ...stroke, at: now };
  });
  const notes = timed.flatMap(({ pitch, isOn, at }, index) => {
    if (!isOn) return [];
    const before = timed.slice(0, index).filter((each) => each.pitch === pitch);
    const open = before.reduce((count, each) => Math.max(0, count + (each.isOn ? 1 : -1)), 0);
    const ends = releasesAfter(timed, index, open);
    const end = ends ?? now;
    return end > at ? [[at, end - at, pitch]] : [];
  });
  return notes.sort(
    (a, b) => (a[0] ?? 0) - (b[0] ?? 0) || (a[2] ?? 0) - (b[2] ?? 0) || (a[1] ?? 0) - (b[1] ?? 0),
  );
}

/** The time of the release after those that end the strokes still open. */
function releasesAfter(
  timed: readonly (Stroke & { readonly at: number })[],
  index: number,
  open: number,
): number | undefined {
  const pitch = timed[index]?.pitch;
  const later = timed.slice(index + 1).filter((each) => each.pitch === pitch && !each.isOn);
  return later[open]?.at;
}

const notesOf = (file: Uint8Array): readonly (readonly number[])[] =>
  readMidi(file).line.notes.map(({ start, duration, pitch }) => [start, duration, pitch]);

describe('readMidi, strokes and releases', () => {
  test('readMidi ends with each release the oldest stroke of its pitch', () => {
    fc.assert(
      fc.property(strokes, (played) => {
        expect(notesOf(midiFile([toTrack(played)], 960))).toEqual(modelOf(played));
      }),
      { numRuns: 500 },
    );
  });

  test('readMidi counts time in proportion, whatever the file counts to the quarter', () => {
    fc.assert(
      fc.property(strokes, fc.constantFrom(24, 96, 120, 192, 240, 480), (played, division) => {
        const scale = 960 / division;
        const expected = modelOf(played).map(([start = 0, duration = 0, pitch]) => [
          start * scale,
          duration * scale,
          pitch,
        ]);
        expect(notesOf(midiFile([toTrack(played)], division))).toEqual(expected);
      }),
    );
  });

  test('readMidi reads the notes of one track the same in formats 0, 1 and 2', () => {
    fc.assert(
      fc.property(strokes, (played) => {
        const file = midiFile([toTrack(played)], 960);
        const read = [0, 1, 2].map((format) => {
          const copy = Uint8Array.from(file);
          copy[9] = format;
          return notesOf(copy);
        });
        expect(read[1]).toEqual(read[0]);
        expect(read[2]).toEqual(read[0]);
      }),
    );
  });

  test('readMidi makes a part a channel of what plays at once on one track', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(0, 1, 2, 3, 4, 5), { minLength: 1 }),
        (channels) => {
          const on = channels.flatMap((channel) => message(0, 0x90 + channel, 60 + channel, 64));
          const off = channels.flatMap((channel, at) =>
            message(at === 0 ? 960 : 0, 0x80 + channel, 60 + channel, 64),
          );
          const { parts } = readMidi(midiFile([[...on, ...off, ...END]], 960));
          const pitches = parts.map(({ line }) => line.notes.map(({ pitch }) => pitch));
          expect(pitches.flat().sort()).toEqual(channels.map((channel) => 60 + channel).sort());
          expect(parts.length).toBe(channels.length);
        },
      ),
    );
  });

  test('readMidi plays no percussion as the line, and marks it', () => {
    const drums = [...message(0, 0x99, 36, 64), ...message(96, 0x89, 36, 64), ...END];
    const tune = [...message(0, 0x90, 67, 64), ...message(96, 0x80, 67, 64), ...END];
    const { parts, line } = readMidi(midiFile([drums, tune]));
    expect(parts.map(({ percussion }) => percussion)).toEqual([true, undefined]);
    expect(line.notes[0]?.pitch).toBe(67);
  });
});

describe('readMidi, tempos and metres', () => {
  const tempo = (delta: number, microseconds: number): readonly number[] => [
    ...message(delta, 0xff, 0x51, 3),
    ...[16, 8, 0].map((shift) => (microseconds >> shift) & 0xff),
  ];
  const metre = (delta: number, upper: number, power: number): readonly number[] =>
    message(delta, 0xff, 0x58, 4, upper, power, 24, 8);
  const note = [...message(0, 0x90, 60, 64), ...message(96, 0x80, 60, 64)];

  test('readMidi reads any tempo to a hundredth of a beat a minute', () => {
    fc.assert(
      fc.property(fc.integer({ min: 60_000, max: 2 ** 24 - 1 }), (microseconds) => {
        const { line } = readMidi(midiFile([[...tempo(0, microseconds), ...note, ...END]]));
        expect(line.tempo).toBeCloseTo(60_000_000 / microseconds, 2);
      }),
    );
  });

  test('readMidi undoes writeMidi for every tempo to a hundredth, in every metre', () => {
    const tempos = fc.integer({ min: 2000, max: 40_000 }).map((hundredths) => hundredths / 100);
    fc.assert(
      fc.property(tempos, fc.constantFrom('4/4', '12/8', '2/2', '6/8'), (beats, count) => {
        const head = { tempo: beats, metre: count } as const;
        const line = makeLine([{ start: 0, duration: 960, pitch: 60 }], head);
        expect(readMidi(writeMidi({ line })).line.tempo).toBeCloseTo(beats, 1);
      }),
    );
  });

  test('readMidi keeps the times of notes where tempo and metre change, and says that the metre does', () => {
    const changes = [...tempo(0, 500_000), ...note, ...tempo(0, 400_000), ...metre(0, 3, 2)];
    const { line, warnings } = readMidi(
      midiFile([[...metre(0, 4, 2), ...changes, ...note, ...END]]),
    );
    expect(line.notes.map(({ start }) => start)).toEqual([0, 960]);
    expect([line.metre, line.tempo]).toEqual(['4/4', 120]);
    expect(line.tempoChanges).toEqual([{ start: 960, tempo: 150 }]);
    expect(warnings.map(({ code }) => code)).toEqual(['metre-change']);
  });

  test('readMidi passes over a tempo of nothing', () => {
    expect(readMidi(midiFile([[...tempo(0, 0), ...note, ...END]])).line.tempo).toBeUndefined();
  });

  test.each([
    [6, 3, '6/8'],
    [2, 1, '2/2'],
    [7, 3, '7/8'],
    [12, 3, '12/8'],
    [8, 5, '4/16'],
  ])('readMidi reads a metre of %i over two to the %i as %s', (upper, power, expected) => {
    expect(readMidi(midiFile([[...metre(0, upper, power), ...note, ...END]])).line.metre).toBe(
      expected,
    );
  });

  test.each([
    [0, 2],
    [4, 200],
    [255, 2],
    [3, 6],
  ])('readMidi takes 4/4 for a metre of %i over two to the %i, and says so', (upper, power) => {
    const { line, warnings } = readMidi(midiFile([[...metre(0, upper, power), ...note, ...END]]));
    expect(line.metre).toBe('4/4');
    expect(warnings.length).toBeGreaterThan(0);
  });
});

describe('readMidi, bends', () => {
  const bend = (delta: number, amount: number): readonly number[] => {
    const value = Math.min(16383, Math.max(0, 8192 + Math.round(amount * 8192)));
    return message(delta, 0xe0, value % 128, Math.floor(value / 128));
  };

  test('readMidi reads a note struck with a bend of whole semitones at the pitch it reaches', () => {
    fc.assert(
      fc.property(fc.integer({ min: 40, max: 80 }), fc.constantFrom(-2, -1, 0, 1), (pitch, by) => {
        const track = [
          ...bend(0, by / 2),
          ...message(0, 0x90, pitch, 64),
          ...message(96, 0x80, pitch, 64),
          ...END,
        ];
        const file = midiFile([track]);
        expect(readMidi(file).line.notes).toEqual([
          { start: 0, duration: 960, pitch: pitch + by, velocity: 64 },
        ]);
        const [struck] = readMidi(file, { bends: false }).line.notes;
        expect(struck?.pitch).toBe(pitch);
        expect(struck && centsAt(struck, 480)).toBe(by * 100);
      }),
    );
  });

  test('readMidi cuts a note where it is bent, keeps its length in all, and ends the bend with it', () => {
    const track = [
      ...message(0, 0x90, 70, 64),
      ...bend(48, -0.5),
      ...message(48, 0x80, 70, 64),
      ...bend(0, 0),
      ...message(0, 0x90, 70, 64),
      ...message(96, 0x80, 70, 64),
      ...END,
    ];
    expect(notesOf(midiFile([track]))).toEqual([
      [0, 480, 70],
      [480, 480, 69],
      [960, 960, 70],
    ]);
  });

  test('readMidi keeps how far a bend lies from the semitone that it is rounded to', () => {
    const track = [
      ...bend(0, -0.2),
      ...message(0, 0x90, 70, 64),
      ...message(96, 0x80, 70, 64),
      ...END,
    ];
    const { line, warnings } = readMidi(midiFile([track]));
    expect(line.notes).toMatchObject([{ pitch: 70, cents: -40 }]);
    expect(warnings).toEqual([]);
  });
});
