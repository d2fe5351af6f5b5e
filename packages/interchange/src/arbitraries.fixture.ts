import { type Line, type Metre, makeLine, parseMetre, type TimedNote } from '@reedplate/line';
import fc from 'fast-check';

/** Metres of every kind: simple, compound, odd. */
export const metres: fc.Arbitrary<Metre> = fc.constantFrom<Metre>(
  '4/4',
  '3/4',
  '12/8',
  '6/8',
  '2/2',
  '5/4',
  '7/8',
);

/** How notes of a line lie in time. */
export interface LineShape {
  /** All times are multiples of this. */
  readonly unit: number;
  /** Whether notes may overlap others, of another pitch. */
  readonly chords: boolean;
}

/** Lines with notes, in any metre, with or without pickup, title and tempo. */
export function lines({ unit, chords }: LineShape): fc.Arbitrary<Line> {
  const step = fc.record({
    rest: fc.integer({ min: 0, max: 4 }),
    length: fc.integer({ min: 1, max: 12 }),
    pitches: fc.uniqueArray(fc.integer({ min: 36, max: 96 }), {
      minLength: 1,
      maxLength: chords ? 3 : 1,
    }),
  });
  return fc
    .record({
      metre: metres,
      pickupShare: fc.double({ min: 0, max: 0.99, noNaN: true }),
      tempo: fc.option(fc.integer({ min: 30, max: 300 }), { nil: undefined }),
      title: fc.option(fc.stringMatching(/^[A-Z][a-zé ]{0,12}[a-z]$/u), { nil: undefined }),
      steps: fc.array(step, { minLength: 1, maxLength: 20 }),
    })
    .map(({ metre, pickupShare, tempo, title, steps }) => {
      const notes: TimedNote[] = [];
      let at = 0;
      for (const { rest, length, pitches } of steps) {
        at += rest * unit;
        for (const pitch of pitches) notes.push({ start: at, duration: length * unit, pitch });
        at += length * unit;
      }
      const pickup = Math.floor((pickupShare * parseMetre(metre).barTicks) / unit) * unit;
      return makeLine(notes, {
        metre,
        pickup,
        ...(tempo === undefined ? {} : { tempo }),
        ...(title === undefined ? {} : { title }),
      });
    });
}

/** Lines whose notes overlap in any way, but for those of one pitch, which lie apart. */
export function overlappingLines(unit: number): fc.Arbitrary<Line> {
  const note = fc.record({
    start: fc.nat({ max: 40 }),
    duration: fc.integer({ min: 1, max: 16 }),
    pitch: fc.integer({ min: 60, max: 71 }),
  });
  return fc.array(note, { minLength: 1, maxLength: 14 }).map((notes) => {
    const kept: TimedNote[] = [];
    for (const { start, duration, pitch } of notes) {
      const end = start + duration;
      const isFree = kept.every(
        (other) =>
          other.pitch !== pitch ||
          other.start > end * unit ||
          other.start + other.duration < start * unit,
      );
      if (isFree) kept.push({ start: start * unit, duration: duration * unit, pitch });
    }
    return makeLine(kept);
  });
}

/** Good bytes with a few of them changed, left out or doubled. */
export function mutations(good: Uint8Array): fc.Arbitrary<Uint8Array> {
  const change = fc.record({
    at: fc.nat({ max: Math.max(0, good.length - 1) }),
    byte: fc.integer({ min: 0, max: 255 }),
    how: fc.constantFrom('set', 'cut', 'double', 'end'),
  });
  return fc.array(change, { minLength: 1, maxLength: 6 }).map((changes) => {
    let bytes = [...good];
    for (const { at, byte, how } of changes) {
      if (how === 'set') bytes[at] = byte;
      else if (how === 'cut') bytes.splice(at, 1);
      else if (how === 'double')
        bytes = [...bytes.slice(0, at), ...bytes.slice(Math.floor(at / 2))];
      else bytes = bytes.slice(0, at);
    }
    return Uint8Array.from(bytes, (byte) => byte ?? 0);
  });
}
