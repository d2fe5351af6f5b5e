import { isReedplateError } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { grid, line, metre, notes, tempos, tick } from './arbitraries.fixture.js';
import {
  type BeatGrid,
  barBeatAt,
  centsAt,
  foldTick,
  lineEnd,
  lineFromSeconds,
  makeLine,
  notesInSeconds,
  parseMetre,
  readLine,
  retimeNote,
  secondsAt,
  tickAt,
  tickAtSeconds,
  transposeLine,
} from './index.js';

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

  test('bar 1 begins after the pickup or the count-in, and each bar is as long as the metre says', () => {
    fc.assert(
      fc.property(grid, fc.integer({ min: 1, max: 1000 }), (on, bar) => {
        const counted = ('countIn' in on ? on.countIn : 0) * parseMetre(on.metre).barTicks;
        expect(tickAt({ bar: 1, beat: 1 }, on)).toBe(on.pickup + counted);
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

  test('transposeLine keeps all but the pitches, and how each note is played', () => {
    fc.assert(
      fc.property(line, fc.integer({ min: -20, max: 20 }), (of, up) => {
        const notesBefore = of.notes.map((note) => ({ ...note, pitch: note.pitch + up }));
        fc.pre(notesBefore.every(({ pitch }) => pitch >= 0 && pitch <= 127));
        expect(transposeLine(of, up)).toEqual({ ...of, notes: notesBefore });
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

describe('pitch curves', () => {
  test('centsAt goes through every point, and stays between the least and the most of them', () => {
    fc.assert(
      fc.property(line, fc.double({ min: 0, max: 1, noNaN: true }), ({ notes: list }, share) => {
        for (const note of list.filter(({ curve }) => curve !== undefined)) {
          const points = note.curve ?? [];
          for (const { at, cents } of points) expect(centsAt(note, at)).toBe(cents);
          const between = centsAt(note, share * note.duration);
          const all = points.map(({ cents }) => cents);
          expect(between).toBeGreaterThanOrEqual(Math.min(...all) - 1e-9);
          expect(between).toBeLessThanOrEqual(Math.max(...all) + 1e-9);
        }
      }),
    );
  });

  test('retimeNote keeps a valid note valid, its last point last, and undoes itself after stretching', () => {
    fc.assert(
      fc.property(line, tick, fc.integer({ min: 1, max: 8 }), (of, start, times) => {
        for (const note of of.notes) {
          const longer = retimeNote(note, { start, duration: note.duration * times });
          expect(retimeNote(longer, note)).toEqual(note);
          const short = retimeNote(note, { start, duration: 1 });
          expect(makeLine([short]).notes).toEqual([short]);
          expect(short.curve?.at(-1)?.cents).toBe(note.curve?.at(-1)?.cents);
        }
      }),
    );
  });
});

describe('seconds', () => {
  const within = fc.integer({ min: 0, max: 1_000_000 });
  const loops = fc
    .tuple(fc.nat(50_000), fc.integer({ min: 1, max: 50_000 }))
    .map(([start, length]) => ({ start, end: start + length }));

  test('tickAtSeconds undoes secondsAt under any tempos and metre, looping or not', () => {
    fc.assert(
      fc.property(within, tempos, metre, fc.option(loops), (at, beats, text, loop) => {
        const timing = { ...beats, metre: text };
        const options = loop === null ? {} : { loop };
        expect(tickAtSeconds(secondsAt(at, timing, options), timing, options)).toBe(at);
      }),
      { numRuns: 500 },
    );
  });

  test('secondsAt begins at 0 and never stands still', () => {
    fc.assert(
      fc.property(within, fc.integer({ min: 1, max: 1000 }), tempos, (at, more, timing) => {
        expect(secondsAt(0, timing)).toBe(0);
        expect(secondsAt(at + more, timing)).toBeGreaterThan(secondsAt(at, timing));
      }),
    );
  });

  test('secondsAt without changes is beats through tempo, and changes to the same tempo change nothing', () => {
    fc.assert(
      fc.property(tempos, ({ tempo, tempoChanges }) => {
        const same = tempoChanges.map(({ start }) => ({ start, tempo }));
        const plain = secondsAt(9600, { tempo });
        expect(plain).toBeCloseTo(600 / tempo, 9);
        expect(secondsAt(9600, { tempo, tempoChanges: same })).toBeCloseTo(plain, 6);
      }),
    );
  });

  test('secondsAt of a loop takes as long for each pass, and foldTick says what sounds', () => {
    fc.assert(
      fc.property(loops, fc.nat(5), tempos, (loop, passes, timing) => {
        const { start, end } = loop;
        const at = start + passes * (end - start);
        expect(foldTick(at, loop)).toEqual({ tick: start, pass: passes + 1 });
        const one = secondsAt(end, timing) - secondsAt(start, timing);
        const [from, to] = [at, at + end - start].map((each) => secondsAt(each, timing, { loop }));
        expect((to ?? 0) - (from ?? 0)).toBeCloseTo(one, 6);
      }),
    );
  });

  test('foldTick keeps what comes before the end, and gives a place before it for all else', () => {
    fc.assert(
      fc.property(within, loops, (at, loop) => {
        const { tick: folded, pass } = foldTick(at, loop);
        expect(folded).toBeLessThan(loop.end);
        expect(folded + (pass - 1) * (loop.end - loop.start)).toBe(at);
        expect(at < loop.end ? folded : Math.max(folded, loop.start)).toBe(folded);
      }),
    );
  });

  test('lineFromSeconds undoes notesInSeconds for every line with a tempo', () => {
    fc.assert(
      fc.property(notes, grid, tempos, (list, on, beats) => {
        const of = makeLine(list, { ...on, ...beats });
        const { notes: _, ...head } = of;
        const inSeconds = notesInSeconds(of);
        expect(lineFromSeconds(inSeconds, head)).toEqual(of);
        const later = inSeconds.map((note) => ({ ...note, start: note.start + 2 }));
        expect(lineFromSeconds(later, { ...head, from: 2 })).toEqual(of);
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
      countIn: fc.anything(),
      tempoChanges: fc.oneof(
        fc.anything(),
        fc.array(fc.record({ start: fc.anything(), tempo: fc.anything() })),
      ),
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
