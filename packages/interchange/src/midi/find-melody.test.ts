import { makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import type { PiecePart } from '../piece.js';
import { findMelody, HARMONICA_PROGRAM } from './find-melody.js';

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

describe('findMelody', () => {
  test('findMelody takes the higher of two parts that are alike', () => {
    const parts = [part('One', 40), part('Two', 70)];
    expect(findMelody(parts)?.name).toBe('Two');
    expect(findMelody([...parts].reverse())?.name).toBe('Two');
  });

  test.each([
    ['a harmonica', { program: HARMONICA_PROGRAM }, 'Low'],
    ['what is named a melody', {}, 'Lead vocal'],
  ])('findMelody takes %s before what lies higher', (_, shape, name) => {
    expect(findMelody([part('High', 90), part(name, 40, shape)])?.name).toBe(name);
  });

  test('findMelody takes single notes before chords', () => {
    expect(findMelody([part('Chords', 70, { together: true }), part('Line', 60)])?.name).toBe(
      'Line',
    );
  });

  test('findMelody passes over percussion, and over parts of hardly any notes', () => {
    const effect: PiecePart = {
      name: 'Lead',
      line: makeLine([{ start: 0, duration: 1, pitch: 100 }]),
    };
    const many = {
      name: 'Line',
      line: makeLine(
        Array.from({ length: 11 }, (_, at) => ({ start: at, duration: 1, pitch: 60 })),
      ),
    };
    expect(findMelody([effect, many])?.name).toBe('Line');
    const kit = part('Melody', 80, { percussion: true });
    expect(findMelody([kit, part('Line', 40)])?.name).toBe('Line');
    expect(findMelody([kit])).toBeUndefined();
    expect(findMelody([])).toBeUndefined();
  });

  test('findMelody takes the same part in any order, or one as good', () => {
    const parts = fc.uniqueArray(fc.integer({ min: 30, max: 90 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(parts, (pitches) => {
        const all = pitches.map((pitch) => part(`at ${pitch}`, pitch));
        const best = findMelody(all)?.name;
        expect(best).toBe(`at ${Math.max(...pitches)}`);
        expect(findMelody([...all].reverse())?.name).toBe(best);
      }),
    );
  });
});
