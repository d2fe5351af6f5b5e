import { makeChart } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { type Line, makeLine, type PitchPoint, type TimedNote } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { readAbc } from '../abc/read-abc.js';
import { writeAbc } from '../abc/write-abc.js';
import { tabLyrics } from '../formats/tab-lyrics.js';
import { readMusicXml } from '../musicxml/read-musicxml.js';
import { writeMusicXml } from '../musicxml/write-musicxml.js';
import type { Piece, Sheet } from '../piece.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const viaXml = (sheet: Sheet): Piece => readMusicXml(writeMusicXml(sheet));
const viaAbc = (sheet: Sheet): Piece => readAbc(writeAbc(sheet))[0] as Piece;
const FORMATS = [
  ['MusicXML', viaXml],
  ['ABC', viaAbc],
] as const;

const tenths = (most: number) =>
  fc.integer({ min: -10 * most, max: 10 * most }).map((value) => value / 10 + 0);
const bends = fc
  .tuple(
    fc.uniqueArray(fc.integer({ min: 1, max: 240 }), { minLength: 1, maxLength: 4 }),
    fc.array(tenths(500), { minLength: 5, maxLength: 5 }),
  )
  .map(([ticks, cents]): readonly PitchPoint[] =>
    [0, ...ticks.sort((a, b) => a - b)].map((at, index) => ({ at, cents: cents[index] ?? 0 })),
  );
const accents = fc.record({ accent: fc.constant(true) }, { requiredKeys: [] });
const everything = fc.oneof(
  fc.record(
    { accent: fc.constant(true), velocity: fc.integer({ min: 1, max: 127 }), cents: tenths(100) },
    { requiredKeys: [] },
  ),
  fc.record({ curve: bends }),
);

/** Notes one after another on a grid of sixteenths, played as `more` says. */
function played<More extends object>(more: fc.Arbitrary<More>): fc.Arbitrary<Line> {
  const note = fc.record({
    rest: fc.nat(2),
    length: fc.integer({ min: 1, max: 12 }),
    pitch: fc.integer({ min: 40, max: 90 }),
    more,
  });
  return fc.array(note, { minLength: 1, maxLength: 10 }).map((list) => {
    let start = 0;
    const notes = list.map(({ rest, length, pitch, more: rest_ }): TimedNote => {
      start += rest * 240;
      const timed = { start, duration: length * 240, pitch, ...rest_ };
      start += length * 240;
      return timed;
    });
    return makeLine(notes);
  });
}

describe('how notes are played', () => {
  test('readMusicXml undoes writeMusicXml: velocity, accents, cents and curves, over bar lines too', () => {
    fc.assert(
      fc.property(played(everything), (line) => {
        expect(viaXml({ line }).line).toEqual(line);
        expect(viaXml({ line }).warnings).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  test('readAbc undoes writeAbc: accents', () => {
    fc.assert(
      fc.property(played(accents), (line) => {
        expect(viaAbc({ line }).line).toEqual(line);
      }),
    );
  });

  test('chords keep how each of their notes is played in MusicXML, and accents in ABC', () => {
    const chord = [60, 64, 67].map((pitch, at) => ({
      start: 0,
      duration: 960,
      pitch,
      velocity: 60 + at,
    }));
    expect(viaXml({ line: makeLine(chord) }).line.notes).toEqual(chord);
    const accented = [60, 64].map((pitch, at) => ({
      ...{ start: 0, duration: 960, pitch },
      ...(at === 1 ? { accent: true } : {}),
    }));
    for (const [, via] of FORMATS) {
      expect(via({ line: makeLine(accented) }).line.notes).toEqual(accented);
    }
  });
});

describe('grace notes', () => {
  const main = (start: number, pitch: number): TimedNote => ({ start, duration: 960, pitch });
  const grace = (start: number, pitch: number, duration = 120): TimedNote => ({
    ...{ start, duration, pitch },
    grace: true,
  });

  test.each(FORMATS)('%s gives back grace notes where readers lay them', (_, via) => {
    const line = makeLine([
      main(0, 60),
      ...[grace(720, 58), grace(840, 59)],
      main(960, 61),
      grace(3720, 70),
      main(3840, 72),
    ]);
    expect(via({ line }).line).toEqual(line);
  });

  test.each(FORMATS)('%s takes grace notes at the beginning together with their note', (_, via) => {
    const line = makeLine([grace(0, 58), grace(0, 59), main(0, 60)]);
    expect(via({ line }).line).toEqual(line);
  });

  test.each(FORMATS)(
    '%s settles any grace notes at once, and keeps their pitches and all other notes',
    (_, via) => {
      const graces = fc.array(
        fc.record({
          before: fc.integer({ min: 1, max: 400 }),
          pitch: fc.integer({ min: 40, max: 90 }),
        }),
        { maxLength: 4 },
      );
      fc.assert(
        fc.property(played(fc.constant({})), graces, fc.nat(9), (line, list, at) => {
          const target = line.notes[at % line.notes.length] as TimedNote;
          const added = list.map(({ before, pitch }) =>
            grace(Math.max(0, target.start - before), pitch, 60),
          );
          const once = via({ line: makeLine([...line.notes, ...added]) }).line;
          expect(via({ line: once }).line).toEqual(once);
          const split = (of: Line, isGrace: boolean) =>
            of.notes.filter((note) => (note.grace === true) === isGrace);
          expect(split(once, false)).toEqual(line.notes);
          const pitches = (notes: readonly TimedNote[]) => notes.map(({ pitch }) => pitch).sort();
          expect(pitches(split(once, true))).toEqual(pitches(added));
        }),
        { numRuns: 200 },
      );
    },
  );

  test('grace notes that sound together come back together', () => {
    const line = makeLine([main(0, 60), grace(840, 64), grace(840, 67), main(960, 60)]);
    for (const [, via] of FORMATS) expect(via({ line }).line).toEqual(line);
  });

  test('a grace note that leads to nothing is written as any other', () => {
    const line = makeLine([main(0, 60), grace(960, 64, 480)]);
    for (const [, via] of FORMATS) {
      expect(via({ line }).line.notes[1]).toEqual({ start: 960, duration: 480, pitch: 64 });
    }
  });

  test('words stand under the notes that grace notes lead to', () => {
    const line = makeLine([main(0, 60), grace(840, 67), main(960, 64)]);
    expect(tabLyrics(line, makeHarp('C'))).toEqual(['+1', '+2']);
    expect(writeAbc({ line }, { words: ['+1', '+2'] })).toContain('"_+1"C2 {G}"_+2"E2');
  });
});

describe('tempo changes and count-in', () => {
  const changes = fc
    .uniqueArray(
      fc.record({
        start: fc.integer({ min: 1, max: 200 }),
        tempo: fc.integer({ min: 30, max: 300 }),
      }),
      {
        selector: ({ start }) => start,
        maxLength: 5,
      },
    )
    .map((list) =>
      list
        .map(({ start, tempo }) => ({ start: start * 120, tempo }))
        .sort((a, b) => a.start - b.start)
        .filter(({ tempo }, at, all) => tempo !== (all[at - 1]?.tempo ?? 100)),
    );

  test.each(FORMATS)(
    '%s gives back tempo changes on their ticks, with the notes as they were',
    (_, via) => {
      fc.assert(
        fc.property(played(fc.constant({})), changes, ({ notes }, tempoChanges) => {
          const last = makeLine([...notes, { start: 24_000, duration: 960, pitch: 60 }], {
            tempo: 100,
            tempoChanges,
          });
          expect(via({ line: last }).line).toEqual(last);
        }),
        { numRuns: 60 },
      );
    },
  );

  test.each(FORMATS)('%s gives back a count-in, with the chart from bar 1 on', (_, via) => {
    const chart = makeChart('basic', 'G');
    const line = makeLine([{ start: 7680, duration: 960, pitch: 67 }], { countIn: 2 });
    const back = via({ line, chart, key: 'G' });
    expect(back.line).toEqual(line);
    expect(back.chart?.spans.map(({ start, numeral }) => [start, numeral])).toEqual(
      chart.spans.map(({ start, numeral }) => [start, numeral]),
    );
  });

  test.each([
    ['I:count-in 0', undefined],
    ['I:count-in x', undefined],
    ['I:count-in 65', undefined],
    ['I:count-in 2', 2],
  ])('readAbc of %j counts %s bars in', (field, bars) => {
    const [piece] = readAbc(`X:1\nM:4/4\nL:1/1\n${field}\nK:C\nz|z|c|]`);
    expect(piece?.line.countIn).toBe(bars);
    expect(piece?.warnings.length).toBe(bars === undefined ? 1 : 0);
  });
});
