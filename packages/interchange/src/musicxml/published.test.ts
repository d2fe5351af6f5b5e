import { makeChart } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { type Line, makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { published } from '../../../../test/sources/published.js';
import { makeBacking } from '../../../backing/src/index.js';
import { lines, overlappingLines } from '../arbitraries.fixture.js';
import { tabLyrics } from '../formats/tab-lyrics.js';
import { openVerovio, type VerovioReading } from './verovio.fixture.js';
import { writeMusicXml } from './write-musicxml.js';

// A busy machine takes its time over hundreds of files.
vi.setConfig({ testTimeout: 120_000 });

let read: (xml: string) => VerovioReading;
beforeAll(async () => {
  read = await openVerovio();
});

/** Verovio plays 120 ticks to the quarter, and ends each note one of them early. */
const LOOSE = 16;

function expectSameNotes({ notes }: Pick<Line, 'notes'>, theirs: VerovioReading['notes']): void {
  const ours = [...notes].sort((a, b) => a.start - b.start || a.pitch - b.pitch);
  expect(theirs.map(([, , pitch]) => pitch)).toEqual(ours.map(({ pitch }) => pitch));
  for (const [at, { start, duration }] of ours.entries()) {
    const [theirStart = 0, theirDuration = 0] = theirs[at] ?? [];
    expect(Math.abs(theirStart - start)).toBeLessThanOrEqual(LOOSE);
    expect(Math.abs(theirDuration - duration)).toBeLessThanOrEqual(LOOSE);
  }
}

const at = (beat: number, beats: number, pitch: number) => ({
  start: Math.round(beat * 960),
  duration: Math.round((beat + beats) * 960) - Math.round(beat * 960),
  pitch,
});

// Outside check: Verovio 6.3.0 (RISM Digital Center, LGPL), an engraver, reads what we write.
describe('MusicXML, read by another reader', () => {
  published('verovio', 'MusicXML', () => {
    test.each([
      ['sixteenths and thirty-seconds', 120, 40],
      ['triplets of quarters, eighths and sixteenths', 160, 60],
      ['triplets of eighths', 320, 30],
    ])(
      'writeMusicXml writes %s that Verovio plays with the same pitches and times',
      (_, unit, runs) => {
        fc.assert(
          fc.property(lines({ unit, chords: true }), (line) => {
            const { notes, log } = read(writeMusicXml({ line, key: 'Eb' }));
            expectSameNotes(line, notes);
            expect(log).toBe('');
          }),
          { numRuns: runs },
        );
      },
    );

    test('writeMusicXml writes notes that overlap in any way which Verovio plays with the same times', () => {
      fc.assert(
        fc.property(overlappingLines(320), (line) => {
          expectSameNotes(line, read(writeMusicXml({ line })).notes);
        }),
        { numRuns: 30 },
      );
    });

    test('writeMusicXml writes voices that overlap which Verovio plays with the same times', () => {
      const held = at(0, 6, 48);
      const line = makeLine([held, at(1, 1 / 3, 64), at(4 / 3, 2 / 3, 67), at(2.5, 3, 72)]);
      expectSameNotes(line, read(writeMusicXml({ line })).notes);
    });
  });

  const chart = makeChart('quick-change', 'G', { choruses: 3, tempo: 100 });
  const chorus = [at(0, 0.5, 67), at(0.5, 0.5, 70), at(3.5, 2, 71), at(44, 2 / 3, 74)];
  const choruses = [0, 48, 96].flatMap((beats) =>
    chorus.map((note) => ({ ...note, start: note.start + (beats + 1) * 960 })),
  );
  const line = makeLine([at(0, 1, 62), ...choruses], { pickup: 960, title: 'Three times' });
  const words = tabLyrics(line, makeHarp('C'));

  published('verovio', 'MusicXML', () => {
    test('writeMusicXml writes choruses between repeat signs that Verovio plays out', () => {
      const xml = writeMusicXml({ line, chart });
      expect(xml).toContain('times="3"');
      expectSameNotes(line, read(xml).notes);
      expectSameNotes(line, read(writeMusicXml({ line, chart }, { repeats: false })).notes);
    });

    test('writeMusicXml writes every chord symbol where Verovio shows it', () => {
      const { harmonies } = read(writeMusicXml({ line, chart }));
      expect(harmonies).toEqual([
        ...['2:1 G7', '3:1 C7', '4:1 G7', '6:1 C7', '8:1 G7'],
        ...['10:1 D7', '11:1 C7', '12:1 G7', '13:1 D7'],
      ]);
    });

    test('writeMusicXml writes tab that Verovio shows under the notes, dialect by dialect', () => {
      expect(read(writeMusicXml({ line, chart }, { words })).words).toEqual(words);
      const arrows = tabLyrics(line, makeHarp('C'), { dialect: 'arrows' });
      expect(arrows.slice(0, 2)).toEqual(['1↓', '2↓']);
      expect(read(writeMusicXml({ line, chart }, { words: arrows })).words).toEqual(arrows);
    });

    test('writeMusicXml writes beams that Verovio draws by the beat, chords and triplets among them', () => {
      const eighths = [at(0, 0.5, 67), at(0, 0.5, 71), at(0.5, 0.5, 70), at(1, 0.5, 71)];
      const shorter = [at(2, 0.75, 67), at(2.75, 0.25, 69)];
      const triplet = [0, 1, 2].map((third) => at(3 + third / 3, 1 / 3, 72));
      const melody = makeLine([...eighths, ...shorter, ...triplet]);
      const { beams, notes, log } = read(writeMusicXml({ line: melody }));
      expect([beams, log]).toEqual([[2, 2, 3], '']);
      expectSameNotes(melody, notes);
    });

    test('writeMusicXml writes key, metre, tempo and instrument that Verovio reads', () => {
      const slow = makeLine([at(0, 1.5, 67)], { metre: '12/8', tempo: 60 });
      expect(read(writeMusicXml({ line: slow, key: 'Em' })).head).toEqual({
        ...{ signature: '1s', mode: 'minor', metre: '12/8' },
        ...{ quartersPerMinute: '90', program: '22' },
      });
    });

    test('writeMusicXml writes chords that change within a bar, on the beat Verovio shows', () => {
      const busy = makeChart('eight-bar', 'C');
      const changes = busy.spans.filter(
        ({ chord }, index) => chord?.symbol !== busy.spans[index - 1]?.chord?.symbol,
      );
      const { harmonies } = read(writeMusicXml({ line: makeLine([at(0, 1, 60)]), chart: busy }));
      expect(changes.some(({ beat }) => beat > 1)).toBe(true);
      expect(harmonies).toEqual(
        changes.map(({ bar, beat, chord }) => `${bar}:${beat} ${chord?.symbol}`),
      );
    });

    test('writeMusicXml writes every part of a backing that Verovio plays', () => {
      const short = makeChart('basic', 'A', { choruses: 1 });
      const backing = makeBacking(short, { countIn: 0, ending: false });
      const pitched = (backing.parts ?? []).filter(({ percussion }) => percussion !== true);
      const notes = pitched.flatMap((part) => part.line.notes);
      const { notes: theirs } = read(writeMusicXml({ ...backing, line: makeLine([]) }));
      expect(pitched.length).toBe(2);
      expectSameNotes({ notes }, theirs);
    });
  });
});
