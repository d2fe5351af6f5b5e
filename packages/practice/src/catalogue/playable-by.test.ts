import { makePlayer, PLAYERS, type Player } from '@reedplate/layout';
import { describe, expect, test } from 'vitest';
import { findPhrases } from './find-phrases.js';

const idsFor = (level: Player | 'natural' | 'bends'): readonly string[] =>
  findPhrases({ level }).map(({ id }) => id);

describe('findPhrases for a player', () => {
  test('gives a player who is a level what the word gives', () => {
    expect(idsFor(PLAYERS.natural)).toEqual(idsFor('natural'));
    expect(idsFor(PLAYERS.bends)).toEqual(idsFor('bends'));
  });

  test('gives who bends 4 draw alone more than who bends nothing, and less than who bends all', () => {
    const player = makePlayer(['natural', { technique: 'bend', breath: 'draw', holes: [4] }]);
    const found = idsFor(player);
    expect(found.length).toBeGreaterThan(0);
    expect(idsFor('bends')).toEqual(expect.arrayContaining([...found]));
    expect(found.length).toBeLessThan(idsFor('bends').length);
    expect(found.some((id) => !idsFor('natural').includes(id))).toBe(true);
  });

  test('refuses what is no player', () => {
    expect(() => findPhrases({ level: 'expert' as 'bends' })).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
    );
  });
});
