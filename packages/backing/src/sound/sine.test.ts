import { expect, test } from 'vitest';
import { sineOfTurn } from './sine.js';

test('sineOfTurn is a sine to five places, at any part of a turn', () => {
  for (let at = 0; at <= 10_000; at += 1) {
    const turn = at / 10_000;
    expect(Math.abs(sineOfTurn(turn) - Math.sin(2 * Math.PI * turn))).toBeLessThan(1e-5);
  }
});
