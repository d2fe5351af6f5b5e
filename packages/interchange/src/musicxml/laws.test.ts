import { makeLine } from '@reedplate/line';
import { isReedplateError } from '@reedplate/pitch';
import fc from 'fast-check';
import { zipSync } from 'fflate';
import { describe, expect, test, vi } from 'vitest';
import { lines, mutations } from '../arbitraries.fixture.js';
import { readMusicXml } from './read-musicxml.js';
import { writeMusicXml } from './write-musicxml.js';

// A busy machine takes its time over hundreds of files.
vi.setConfig({ testTimeout: 60_000 });

const CODES = ['MUSICXML_MALFORMED', 'FILE_TOO_LARGE'];

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
