import fc from 'fast-check';
import type { Line, NoteExpression, PitchPoint, TempoChange, TimedNote } from './line.js';
import { makeLine } from './make-line.js';
import { type Metre, parseMetre } from './metre.js';

export const metre = fc
  .tuple(fc.integer({ min: 1, max: 32 }), fc.constantFrom(1, 2, 4, 8, 16))
  .map(([numerator, unit]): Metre => `${numerator}/${unit as 4}`);

/** A metre with a pickup, or with bars counted in. */
export const grid = metre.chain((text) =>
  fc.oneof(
    fc.record({
      metre: fc.constant(text),
      pickup: fc.integer({ min: 0, max: parseMetre(text).barTicks - 1 }),
    }),
    fc.record({
      metre: fc.constant(text),
      pickup: fc.constant(0),
      countIn: fc.integer({ min: 1, max: 64 }),
    }),
  ),
);

export const tick = fc.integer({ min: 0, max: 2 ** 40 });

function cents(most: number): fc.Arbitrary<number> {
  return fc.double({ min: -most, max: most, noNaN: true }).map((value) => value + 0);
}

function curve(duration: number): fc.Arbitrary<readonly PitchPoint[]> {
  const points = fc.uniqueArray(fc.integer({ min: 0, max: duration }), {
    minLength: 1,
    maxLength: 6,
  });
  return points.chain((ticks) =>
    fc.tuple(
      ...ticks
        .sort((a, b) => a - b)
        .map((at) => fc.record({ at: fc.constant(at), cents: cents(2400) })),
    ),
  );
}

function expression(duration: number): fc.Arbitrary<NoteExpression> {
  return fc.record(
    {
      velocity: fc.integer({ min: 1, max: 127 }),
      accent: fc.boolean(),
      grace: fc.boolean(),
      cents: cents(100),
      curve: curve(duration),
      confidence: fc.double({ min: 0, max: 1, noNaN: true }).map((value) => value + 0),
    },
    { requiredKeys: [] },
  );
}

const note = fc
  .record({
    start: fc.integer({ min: 0, max: 100_000 }),
    duration: fc.integer({ min: 1, max: 10_000 }),
    pitch: fc.integer({ min: 0, max: 127 }),
  })
  .chain((plain) =>
    fc
      .option(expression(plain.duration), { nil: {} })
      .map((more): TimedNote => ({ ...plain, ...more })),
  );

export const notes = fc.array(note, { maxLength: 20 });

export const tempo = fc.double({ min: 1, max: 1000, noNaN: true });

export const tempoChanges = fc
  .uniqueArray(fc.record({ start: fc.integer({ min: 1, max: 100_000 }), tempo }), {
    selector: ({ start }) => start,
    maxLength: 6,
  })
  .map((changes): readonly TempoChange[] => changes.sort((a, b) => a.start - b.start));

/** A tempo with where it changes. */
export const tempos = fc.record({ tempo, tempoChanges });

export const line = fc
  .tuple(
    notes,
    grid,
    fc.oneof(fc.constant({}), fc.record({ tempo }), tempos),
    fc.option(fc.string({ unit: 'binary' }), { nil: undefined }),
  )
  .map(
    ([list, on, beats, title]): Line =>
      makeLine(list, { ...on, ...beats, ...(title === undefined ? {} : { title }) }),
  );
