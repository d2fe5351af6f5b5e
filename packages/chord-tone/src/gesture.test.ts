import { makeHarp, TUNINGS } from '@reedplate/layout';
import { describe, expect, it } from 'vitest';
import { gesturesOf } from './gesture.js';

describe('gesturesOf', () => {
  const gestures = gesturesOf(makeHarp('C'), 'natural');
  const count = (name: string): number => gestures.filter(({ gesture }) => gesture === name).length;

  it('gesturesOf counts what ten holes allow on two breaths', () => {
    expect(count('run')).toBe(2 * (8 + 7 + 6));
    expect(count('double-stop')).toBe(2 * 9);
    expect(count('split')).toBe(2 * (8 + 7 + 6));
  });

  it('gesturesOf names no holes twice on one breath', () => {
    const names = gestures.map(({ breath, holes }) => `${breath} ${holes.map(({ hole }) => hole)}`);
    expect(new Set(names).size).toBe(names.length);
  });

  it('gesturesOf blocks one to three holes in a split', () => {
    for (const { gesture, holes } of gestures) {
      const [low, high] = [holes[0]?.hole ?? 0, holes.at(-1)?.hole ?? 0];
      if (gesture === 'split') expect([2, 3, 4]).toContain(high - low);
      if (gesture === 'run') expect(high - low).toBe(holes.length - 1);
    }
  });

  it('gesturesOf knows harps of more holes', () => {
    const longer = TUNINGS.filter(({ holes }) => holes.length > 10);
    expect(longer.length).toBeGreaterThan(0);
    for (const { id } of longer) {
      const harp = makeHarp('C', { tuning: id });
      const runs = gesturesOf(harp, 'natural').filter(({ gesture }) => gesture === 'run');
      expect(runs.length).toBe(2 * (3 * harp.holes.length - 9));
    }
  });
});
