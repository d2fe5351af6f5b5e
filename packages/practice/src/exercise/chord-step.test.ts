import { parseChord } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import { semitonesOfStep } from './chord-step.js';

describe('semitonesOfStep', () => {
  it.each([
    ['G7', '1', 0, 'the root'],
    ['G7', '3', 4, 'a major third'],
    ['Gm7', '3', 3, 'a minor third'],
    ['G7sus4', '3', 5, 'the fourth that stands for the third'],
    ['Gm7b5', '5', 6, 'a flat fifth'],
    ['Gaug', '5', 8, 'a raised fifth'],
    ['Gmaj7', '7', 11, 'a major seventh'],
    ['G6', '7', 9, 'the sixth that stands for the seventh'],
    ['G', '7', 10, 'the flat seventh of the blues where the chord says nothing'],
    ['G5', '3', 0, 'the root where the chord has no third'],
  ] as const)('semitonesOfStep of %s, step %s, is %d: %s', (symbol, step, semitones, _) => {
    expect(semitonesOfStep(parseChord(symbol), step)).toBe(semitones);
  });
});
