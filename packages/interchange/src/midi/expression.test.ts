import { centsAt, type Line, makeLine, type PitchPoint, type TimedNote } from '@reedplate/line';
import fc from 'fast-check';
import { parseMidi } from 'midi-file';
import { describe, expect, test } from 'vitest';
import { message, midiFile } from './midi-bytes.fixture.js';
import { readMidi } from './read-midi.js';
import { writeMidi } from './write-midi.js';

const back = (line: Line): Line => readMidi(writeMidi({ line }), { bends: false }).line;

/** Notes one after another, each with what `more` gives it. */
function notesWith<More extends object>(
  more: fc.Arbitrary<More>,
): fc.Arbitrary<readonly (TimedNote & More)[]> {
  const note = fc.record({
    duration: fc.integer({ min: 1, max: 4000 }),
    pitch: fc.integer({ min: 30, max: 100 }),
    more,
  });
  return fc.array(note, { minLength: 1, maxLength: 8 }).map((list) => {
    let start = 0;
    return list.map(({ duration, pitch, more: rest }) => {
      const timed = { start, duration, pitch, ...rest };
      start += duration;
      return timed;
    });
  });
}

const tenths = (most: number) =>
  fc.integer({ min: -10 * most, max: 10 * most }).map((value) => value / 10 + 0);

describe('velocity', () => {
  test('comes back as it was, on every note', () => {
    const velocities = notesWith(fc.record({ velocity: fc.integer({ min: 1, max: 127 }) }));
    fc.assert(
      fc.property(velocities, (notes) => {
        fc.pre(notes.some(({ velocity }) => velocity !== 96));
        expect(back(makeLine(notes)).notes).toEqual(makeLine(notes).notes);
      }),
    );
  });

  test('is not said where a line says none', () => {
    fc.assert(
      fc.property(notesWith(fc.constant({})), (notes) => {
        expect(back(makeLine(notes)).notes).toEqual(notes);
      }),
    );
  });

  test('is kept of files of others, and taken for none where it is what we write for none', () => {
    const part = (velocity: number) => [
      ...message(0, 0x90, 60, velocity),
      ...message(96, 0x80, 60, 0),
    ];
    expect(readMidi(midiFile([part(100)])).line.notes[0]?.velocity).toBe(100);
    expect(readMidi(midiFile([part(72)])).line.notes[0]).not.toHaveProperty('velocity');
  });
});

describe('bends', () => {
  test('cents come back to a tenth, as the pitch and its cents by default too', () => {
    fc.assert(
      fc.property(notesWith(fc.record({ cents: tenths(100) })), (notes) => {
        const read = back(makeLine(notes)).notes;
        expect(read.map(({ cents = 0 }) => cents)).toEqual(notes.map(({ cents }) => cents));
        for (const [at, note] of readMidi(
          writeMidi({ line: makeLine(notes) }),
        ).line.notes.entries()) {
          const { pitch, cents } = notes[at] as TimedNote & { readonly cents: number };
          expect(note.pitch * 100 + (note.cents ?? 0)).toBeCloseTo(pitch * 100 + cents, 6);
        }
      }),
    );
  });

  /** A glide each quarter note at the most: what comes faster, a wheel of 24 steps to it rounds off. */
  const curves = fc
    .array(tenths(300), { minLength: 1, maxLength: 5 })
    .map((cents): readonly PitchPoint[] =>
      cents.map((each, at) => ({ at: at * 480, cents: each })),
    );

  test('a curve comes back within five cents at every moment', () => {
    fc.assert(
      fc.property(curves, fc.integer({ min: 40, max: 90 }), (curve, pitch) => {
        const note = { start: 480, duration: 2400, pitch, curve };
        const [read] = back(makeLine([note])).notes;
        expect(read).toMatchObject({ start: 480, duration: 2400, pitch });
        for (let at = 0; at <= 2400; at += 40) {
          expect(Math.abs(centsAt(read ?? {}, at) - centsAt(note, at))).toBeLessThanOrEqual(5);
        }
      }),
    );
  });

  test('a scoop comes back as its points, and the next note is not bent', () => {
    const scoop = {
      start: 0,
      duration: 960,
      pitch: 67,
      curve: [
        { at: 0, cents: -80 },
        { at: 240, cents: 0 },
      ],
    };
    const plain = { start: 960, duration: 960, pitch: 70 };
    const line = makeLine([scoop, plain], { tempo: 96 });
    expect(back(line)).toEqual(line);
    // By default a note is cut where it stays on another semitone: a scoop is on its way.
    expect(readMidi(writeMidi({ line })).line).toEqual(line);
  });

  test('the range of the wheel is set by registered parameter 0, in whole semitones', () => {
    const eventsOf = (cents: number) => {
      const curve = [
        { at: 0, cents: 0 },
        { at: 48, cents },
      ];
      const line = makeLine([{ start: 0, duration: 96, pitch: 60, curve }]);
      return parseMidi(writeMidi({ line })).tracks[1] ?? [];
    };
    const settings = (cents: number) =>
      eventsOf(cents).flatMap((event) =>
        event.type === 'controller' ? [[event.controllerType, event.value]] : [],
      );
    const range = (semitones: number) => [
      [101, 0],
      [100, 0],
      [6, semitones],
      [38, 0],
      [101, 127],
      [100, 127],
    ];
    expect(settings(-150)).toEqual(range(2));
    expect(settings(201)).toEqual(range(3));
    expect(settings(-2400)).toEqual(range(24));
    const values = eventsOf(-200).flatMap((event) =>
      event.type === 'pitchBend' ? [event.value] : [],
    );
    expect([values[0], values.at(-1)]).toEqual([0, -8192]);
  });

  test('a part without bends has none written', () => {
    const line = makeLine([{ start: 0, duration: 96, pitch: 60, velocity: 3 }]);
    const types = parseMidi(writeMidi({ line }))
      .tracks.flat()
      .map(({ type }) => type);
    expect(types).not.toContain('pitchBend');
    expect(types).not.toContain('controller');
  });

  test('a long glide is written in few steps, however long it is', () => {
    const curve = [
      { at: 0, cents: -200 },
      { at: 2 ** 36, cents: 200 },
    ];
    const line = makeLine([{ start: 0, duration: 2 ** 36, pitch: 60, curve }]);
    const events = parseMidi(writeMidi({ line })).tracks.flat();
    expect(events.filter(({ type }) => type === 'pitchBend').length).toBeLessThan(70);
  });

  test('many notes under many bends cost no more than the bends of hours', () => {
    const on = Array.from({ length: 1000 }, () => message(0, 0x90, 60, 64)).flat();
    const wheel = Array.from({ length: 1000 }, (_, at) => message(1, 0xe0, 0, at % 128)).flat();
    const { warnings } = readMidi(midiFile([[...on, ...wheel]]));
    expect(warnings.map(({ code }) => code)).toContain('data-malformed');
  });

  test('a bend beyond two octaves is cut off there, and said', () => {
    const range = [
      [101, 0],
      [100, 0],
      [6, 48],
    ].flatMap(([a, b]) => message(0, 0xb0, a ?? 0, b ?? 0));
    const stroke = [...message(0, 0x90, 60, 64), ...message(96, 0x80, 60, 0)];
    const file = midiFile([[...range, ...message(0, 0xe0, 0, 0), ...stroke]]);
    const { line, warnings } = readMidi(file, { bends: false });
    expect(line.notes[0]?.curve).toEqual([{ at: 0, cents: -2400 }]);
    expect(warnings).toMatchObject([{ code: 'pitch-bend' }]);
  });
});

describe('tempo and count-in', () => {
  const tempo = fc.integer({ min: 3000, max: 30_000 }).map((hundredths) => hundredths / 100);
  const changes = fc.uniqueArray(fc.record({ start: fc.integer({ min: 1, max: 50_000 }), tempo }), {
    selector: ({ start }) => start,
    maxLength: 5,
  });

  test('tempo changes come back on their ticks, to a tenth of a beat a minute', () => {
    fc.assert(
      fc.property(tempo, changes, fc.constantFrom('4/4', '12/8'), (beats, list, metre) => {
        const tempoChanges = list.sort((a, b) => a.start - b.start);
        const line = makeLine([{ start: 0, duration: 960, pitch: 60 }], {
          tempo: beats,
          tempoChanges,
          metre,
        });
        const read = back(line);
        const all = (of: Line) => [{ start: 0, tempo: of.tempo ?? 0 }, ...(of.tempoChanges ?? [])];
        // A change to nearly the same tempo may come back as none.
        for (const { start, tempo: written } of all(line)) {
          const held = all(read).findLast((change) => change.start <= start);
          expect(held?.tempo).toBeCloseTo(written, 0);
        }
        expect(all(read).length).toBeLessThanOrEqual(all(line).length);
      }),
    );
  });

  test('bars counted in come back, with chords and notes in their bars', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 64 }), (countIn) => {
        const line = makeLine([{ start: 3840 * countIn, duration: 960, pitch: 60 }], {
          tempo: 96,
          countIn,
        });
        expect(back(line)).toEqual(line);
      }),
    );
  });
});
