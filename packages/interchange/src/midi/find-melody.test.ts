import { makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import type { PiecePart } from '../piece.js';
import { findMelody } from './find-melody.js';
import { HARMONICA_PROGRAM } from './melody-clues.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

/** A part of so many notes, one after another or all at once. */
function part(
  name: string,
  pitch: number,
  shape: Partial<PiecePart> & { readonly together?: boolean } = {},
): PiecePart {
  const { together = false, ...rest } = shape;
  const notes = Array.from({ length: 8 }, (_, at) => ({
    start: together ? 0 : at * 480,
    duration: 480,
    pitch: pitch + at,
  }));
  return { name, line: makeLine(notes), ...rest };
}

/** Name of the part that is found. */
function nameOf(parts: readonly PiecePart[]): string | undefined {
  const found = findMelody(parts);
  return found && parts[found.part - 1]?.name;
}

describe('findMelody', () => {
  test('findMelody takes the higher of two parts that are alike', () => {
    const parts = [part('One', 40), part('Two', 70)];
    expect(nameOf(parts)).toBe('Two');
    expect(nameOf([...parts].reverse())).toBe('Two');
  });

  test.each([
    ['a harmonica', { program: HARMONICA_PROGRAM }, 'Low'],
    ['what is named a melody', {}, 'Lead vocal'],
  ])('findMelody takes %s before what lies higher', (_, shape, name) => {
    expect(nameOf([part('High', 90), part(name, 40, shape)])).toBe(name);
  });

  test('findMelody takes single notes before chords', () => {
    expect(nameOf([part('Strum', 70, { together: true }), part('Line', 60)])).toBe('Line');
  });

  /** A part of so many single notes. */
  const steps = (name: string, count: number, pitch: number): PiecePart => ({
    name,
    line: makeLine(
      Array.from({ length: count }, (_, at) => ({ start: at * 2, duration: 1, pitch })),
    ),
  });

  test('findMelody passes over percussion, and over parts of hardly any notes', () => {
    expect(nameOf([steps('Bell', 1, 100), steps('Line', 51, 60)])).toBe('Line');
    expect(nameOf([steps('Fill', 2, 90), steps('Line', 51, 60)])).toBe('Fill');
    const kit = part('Melody', 80, { percussion: true });
    expect(nameOf([kit, part('Line', 40)])).toBe('Line');
    expect(findMelody([kit])).toBeUndefined();
    expect(findMelody([])).toBeUndefined();
  });

  test('findMelody takes a short tune before a long bass, however many drums there are', () => {
    const bass = { ...steps('Bass', 400, 40), program: 34 };
    const chords = { ...part('Guitar', 52, { together: true }), program: 27 };
    const kit = { ...steps('Drums', 3000, 42), percussion: true as const };
    expect(nameOf([bass, chords, kit, steps('Riff', 12, 67)])).toBe('Riff');
    expect(nameOf([bass, chords, kit])).toBe('Guitar');
  });

  test('findMelody says what speaks for a part, and where nothing does', () => {
    const harp = part('Harmonica', 60, { program: 23 });
    const bass = part('Bass', 40, { program: 34 });
    const reasons = ['name', 'program', 'single-notes', 'range'];
    expect(findMelody([bass, harp])).toEqual({ part: 2, reasons, ties: [], doubtful: false });
    expect(findMelody([harp])).toMatchObject({ reasons: ['only'] });
    expect(findMelody([bass, { ...bass, name: 'Drum bass' }])).toEqual({
      part: 1,
      reasons: ['single-notes'],
      ties: [2],
      doubtful: true,
    });
  });

  test.each([
    [41, 'violin', true],
    [44, 'contrabass', true],
    [45, 'tremolo strings', false],
    [57, 'trumpet', true],
    [66, 'saxophone', true],
    [80, 'ocarina', true],
    [88, 'synth lead', true],
    [1, 'piano', false],
    [64, 'synth brass', false],
  ])('findMelody takes program %i (%s) before a higher part: %s', (program, _, isTaken) => {
    const parts = [part('', 60, { program }), part('', 61)];
    expect(findMelody(parts)?.part).toBe(isTaken ? 1 : 2);
  });

  test.each([33, 40, 49, 52, 56, 89, 104, 113, 128])(
    'findMelody takes a lower part before program %i, which goes with a tune',
    (program) => {
      expect(findMelody([part('', 60, { program }), part('', 59)])?.part).toBe(2);
    },
  );

  test.each([32, 41, 48, 53, 55, 57, 105, 112])(
    'findMelody has nothing against program %i',
    (program) => {
      expect(findMelody([part('', 60, { program }), part('', 59)])?.part).toBe(1);
    },
  );

  test('findMelody takes the same part in any order, or one as good', () => {
    const parts = fc.uniqueArray(fc.integer({ min: 30, max: 90 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(parts, (pitches) => {
        const all = pitches.map((pitch) => part(`at ${pitch}`, pitch));
        const best = nameOf(all);
        expect(best).toBe(`at ${Math.max(...pitches)}`);
        expect(nameOf([...all].reverse())).toBe(best);
      }),
    );
  });
});
