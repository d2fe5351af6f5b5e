import { makeLine, parseMetre } from '@reedplate/line';
import { isReedplateError, TWELVE_KEYS } from '@reedplate/pitch';
import fc from 'fast-check';
import { zipSync } from 'fflate';
import { describe, expect, test, vi } from 'vitest';
import { lines, mutations, overlappingLines } from '../arbitraries.fixture.js';
import { readMusicXml } from './read-musicxml.js';
import { writeMusicXml } from './write-musicxml.js';
import { child, childNumber, childrenOf, readXml } from './xml-tree.js';

// A busy machine takes its time over hundreds of files.
vi.setConfig({ testTimeout: 60_000 });

const CODES = ['MUSICXML_MALFORMED', 'FORMAT_UNKNOWN', 'FILE_TOO_LARGE'];

function readOrTypedError(wild: string | Uint8Array): void {
  try {
    expect(readMusicXml(wild).line.notes.length).toBeGreaterThanOrEqual(0);
  } catch (error) {
    expect(isReedplateError(error) && CODES.includes(error.code)).toBe(true);
  }
}

describe('laws of MusicXML', () => {
  test.each([1, 40, 60])(
    'readMusicXml undoes writeMusicXml for times in units of %i ticks',
    (unit) => {
      fc.assert(
        fc.property(lines({ unit, chords: true }), (line) => {
          expect(readMusicXml(writeMusicXml({ line })).line).toEqual(line);
        }),
      );
    },
  );

  test.each([240, 320])(
    'readMusicXml undoes writeMusicXml for voices that overlap, in units of %i',
    (unit) => {
      fc.assert(
        fc.property(overlappingLines(unit), (line) => {
          const piece = readMusicXml(writeMusicXml({ line }));
          expect([piece.line, piece.warnings]).toEqual([line, []]);
        }),
      );
    },
  );

  const keys = fc.constantFrom(...TWELVE_KEYS.map(({ name }) => name), 'Am', 'C#m', 'Bbm');

  test('readMusicXml reads the key and the words of writeMusicXml, and every pitch in it', () => {
    fc.assert(
      fc.property(lines({ unit: 120, chords: true }), keys, (line, key) => {
        const words = line.notes.map((_, at) => `-${at}<&`);
        const piece = readMusicXml(writeMusicXml({ line, key }, { words }));
        expect([piece.line, piece.key]).toEqual([line, key]);
        expect(piece.warnings.map(({ code }) => code)).toEqual(['words']);
      }),
      { numRuns: 50 },
    );
  });

  test('readMusicXml gives back every part of a sheet, at its times, by its name', () => {
    const parts = fc.array(lines({ unit: 120, chords: false }), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(parts, (all) => {
        const named = all.map(({ notes }, at) => ({
          ...{ name: `Part ${at + 1}`, program: at + 1, line: makeLine(notes) },
        }));
        const [first] = named;
        const back = readMusicXml(
          writeMusicXml({ line: first?.line ?? makeLine([]), parts: named }),
        );
        expect(back.parts).toEqual(named);
      }),
      { numRuns: 50 },
    );
  });

  test('writeMusicXml writes a tuplet to its end before another begins, in each voice', () => {
    fc.assert(
      fc.property(lines({ unit: 160, chords: true }), (line) => {
        const marks = [...writeMusicXml({ line }).matchAll(/<tuplet type="(start|stop)"\/>/gu)];
        const types = marks.map(([, type]) => type);
        expect(types.filter((type) => type === 'start').length * 2).toBe(types.length);
        for (const [at, type] of types.entries())
          expect(type).toBe(at % 2 === 0 ? 'start' : 'stop');
      }),
    );
  });

  test('writeMusicXml fills every measure with each voice, as long as the metre says', () => {
    fc.assert(
      fc.property(lines({ unit: 40, chords: true }), (line) => {
        const root = readXml(writeMusicXml({ line }));
        const measures = childrenOf(child(root, 'part') ?? root, 'measure');
        const { barTicks } = parseMetre(line.metre);
        for (const measure of measures) {
          const length = measure.attributes.has('implicit') ? line.pickup : barTicks;
          const sounding = childrenOf(measure, 'note').filter(
            (note) => child(note, 'chord') === undefined,
          );
          const backups = childrenOf(measure, 'backup').length;
          const total = sounding.reduce(
            (sum, note) => sum + (childNumber(note, 'duration') ?? 0),
            0,
          );
          expect(total).toBe((backups + 1) * length);
        }
      }),
      { numRuns: 50 },
    );
  });

  const sample = writeMusicXml({
    line: makeLine([67, 70, 72].map((pitch, at) => ({ start: at * 960, duration: 900, pitch }))),
  });
  const bytes = new TextEncoder().encode(sample);

  test('readMusicXml gives a piece or a typed error for arbitrary and mutated text', () => {
    const wild = fc.oneof(fc.string({ unit: 'binary' }), mutations(bytes));
    fc.assert(fc.property(wild, readOrTypedError), { numRuns: 500 });
  });

  test('readMusicXml gives a piece or a typed error for mutated archives', () => {
    fc.assert(fc.property(mutations(zipSync({ 'a.xml': bytes })), readOrTypedError), {
      numRuns: 500,
    });
  });
});
