import { isReedplateError } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type BeatGrid,
  barBeatAt,
  type Line,
  lineEnd,
  type Metre,
  makeLine,
  parseMetre,
  readLine,
  tickAt,
  transposeLine,
} from './index.js';

const metre = fc
  .tuple(fc.integer({ min: 1, max: 32 }), fc.constantFrom(1, 2, 4, 8, 16))
  .map(([numerator, unit]): Metre => `${numerator}/${unit as 4}`);
const grid = metre.chain((text) =>
  fc.record({
    metre: fc.constant(text),
    pickup: fc.integer({ min: 0, max: parseMetre(text).barTicks - 1 }),
  }),
);
const tick = fc.integer({ min: 0, max: 2 ** 40 });
const notes = fc.array(
  fc.record({
    start: fc.integer({ min: 0, max: 100_000 }),
    duration: fc.integer({ min: 1, max: 10_000 }),
    pitch: fc.integer({ min: 0, max: 127 }),
  }),
  { maxLength: 30 },
);
const line = fc
  .tuple(
    notes,
    grid,
    fc.option(fc.double({ min: 1, max: 1000, noNaN: true }), { nil: undefined }),
    fc.option(fc.string({ unit: 'binary' }), { nil: undefined }),
  )
  .map(
    ([list, { metre: text, pickup }, tempo, title]): Line =>
      makeLine(list, {
        metre: text,
        pickup,
        ...(tempo === undefined ? {} : { tempo }),
        ...(title === undefined ? {} : { title }),
      }),
  );

describe('bars and beats', () => {
  test('tickAt undoes barBeatAt at every tick in any metre', () => {
    fc.assert(
      fc.property(tick, grid, (at, on) => {
        expect(tickAt(barBeatAt(at, on), on)).toBe(at);
      }),
      { numRuns: 1000 },
    );
  });

  test('barBeatAt undoes tickAt wherever a place is on a tick', () => {
    const place = grid.chain((on) =>
      fc.tuple(fc.constant(on), fc.nat(1000), fc.nat(parseMetre(on.metre).barTicks - 1)),
    );
    fc.assert(
      fc.property(place, ([on, bars, ticks]) => {
        const at = { bar: bars + 1, beat: ticks / parseMetre(on.metre).beatTicks + 1 };
        const back = barBeatAt(tickAt(at, on), on);
        expect(back.bar).toBe(at.bar);
        expect(back.beat).toBeCloseTo(at.beat, 9);
      }),
    );
  });

  test('time never runs backwards: a later tick is a later bar, or a later beat of the same', () => {
    fc.assert(
      fc.property(tick, fc.integer({ min: 1, max: 10_000 }), grid, (at, more, on) => {
        const [sooner, later] = [barBeatAt(at, on), barBeatAt(at + more, on)];
        expect(
          later.bar > sooner.bar || (later.bar === sooner.bar && later.beat > sooner.beat),
        ).toBe(true);
      }),
    );
  });

  test('bar 1 begins at the pickup and each bar is as long as the metre says', () => {
    fc.assert(
      fc.property(grid, fc.integer({ min: 1, max: 1000 }), (on, bar) => {
        expect(tickAt({ bar: 1, beat: 1 }, on)).toBe(on.pickup);
        const length = tickAt({ bar: bar + 1, beat: 1 }, on) - tickAt({ bar, beat: 1 }, on);
        expect(length).toBe(parseMetre(on.metre).barTicks);
      }),
    );
  });

  test('beats fill the bar: beatsPerBar beats of beatTicks, both whole', () => {
    fc.assert(
      fc.property(metre, (text) => {
        const { barTicks, beatTicks, beatsPerBar } = parseMetre(text);
        expect(beatsPerBar * beatTicks).toBe(barTicks);
        expect(Number.isInteger(beatsPerBar) && Number.isInteger(beatTicks)).toBe(true);
      }),
    );
  });

  test('tickAt gives a tick or a ReedplateError for any two numbers', () => {
    fc.assert(
      fc.property(fc.double(), fc.double(), grid, (bar, beat, on: BeatGrid) => {
        try {
          expect(Number.isSafeInteger(tickAt({ bar, beat }, on))).toBe(true);
        } catch (error) {
          if (!isReedplateError(error)) throw error;
          expect(error.code).toBe('NUMBER_RANGE');
        }
      }),
    );
  });
});

describe('lines', () => {
  test('transposeLine undoes itself, and moves add, wherever the notes stay within MIDI', () => {
    fc.assert(
      fc.property(line, fc.integer({ min: -127, max: 127 }), (of, up) => {
        const pitches = of.notes.map((note) => note.pitch + up);
        fc.pre(pitches.every((pitch) => pitch >= 0 && pitch <= 127));
        expect(transposeLine(transposeLine(of, up), -up)).toEqual(of);
        expect(transposeLine(of, 0)).toEqual(of);
        expect(lineEnd(transposeLine(of, up))).toBe(lineEnd(of));
      }),
    );
  });

  test('readLine gives back what JSON made of a line, as text and as a value', () => {
    fc.assert(
      fc.property(line, (of) => {
        expect(readLine(JSON.stringify(of))).toEqual(of);
        expect(readLine(JSON.parse(JSON.stringify(of)))).toEqual(of);
      }),
    );
  });

  test('makeLine does not depend on the order of the notes, and is settled once made', () => {
    fc.assert(
      fc.property(notes, (list) => {
        const made = makeLine(list);
        expect(makeLine([...list].reverse())).toEqual(made);
        expect(makeLine(made.notes)).toEqual(made);
        expect(made.notes).toHaveLength(list.length);
      }),
    );
  });
});

describe('arbitrary input', () => {
  const nasty = fc.constantFrom(
    'valueOf',
    '__proto__',
    '{"__proto__":1}',
    '\uD800',
    '[',
    '['.repeat(100_000),
    '4/4'.repeat(300_000),
    '1'.repeat(1_000_000),
  );
  const nearly = fc.record(
    {
      notes: fc.anything(),
      metre: fc.oneof(metre, fc.anything()),
      pickup: fc.anything(),
      tempo: fc.anything(),
    },
    { requiredKeys: ['notes'] },
  );

  test.each<[string, (input: unknown) => unknown]>([
    ['readLine', readLine],
    ['parseMetre', (input) => parseMetre(input as string)],
    ['makeLine', (input) => makeLine(input as [])],
  ])('%s gives a frozen value or a ReedplateError', (_, read) => {
    const input = fc.oneof(nasty, fc.string({ unit: 'binary' }), fc.json(), nearly, fc.anything());
    fc.assert(
      fc.property(input, (given) => {
        try {
          expect(Object.isFrozen(read(given))).toBe(true);
        } catch (error) {
          if (!isReedplateError(error)) throw error;
          expect(error.message.length).toBeLessThan(1000);
        }
      }),
      { numRuns: 1000 },
    );
  });
});
