import { describe, expect, it } from 'vitest';
import { parsePhrase } from '../phrase/parse-phrase.js';
import { varyPhrase } from './vary-phrase.js';

const degrees = (...given: Parameters<typeof varyPhrase>) =>
  varyPhrase(...given).notes.map(({ degree }) => degree);

describe('varyPhrase of a phrase without chords', () => {
  const alone = parsePhrase('-2 -3 -4', { harmony: 'N.C.' });

  it('varyPhrase answers on the tonic', () => {
    expect(degrees(alone, [{ way: 'answered' }]).at(-1)).toBe('1');
  });

  it('varyPhrase makes it minor by the thirds and sixths of the key', () => {
    expect(degrees(alone, [{ way: 'minor' }])).toEqual(['1', 'b3', '5']);
  });

  it('varyPhrase shakes each note with the minor third above', () => {
    expect(degrees(alone, [{ way: 'ornamented', with: 'shake' }]).slice(0, 4)).toEqual([
      '1',
      'b3',
      '1',
      'b3',
    ]);
  });
});

describe('varyPhrase', () => {
  it('varyPhrase accents the first note of a shake alone', () => {
    const { notes } = varyPhrase(parsePhrase('-2:2;accent'), [
      { way: 'ornamented', with: 'shake' },
    ]);
    expect(notes.map(({ accent = false }) => accent)).toEqual([true, ...Array(7).fill(false)]);
  });

  it('varyPhrase refuses to take a pickup through other chords', () => {
    const phrase = parsePhrase('-3:1/2 -3:1/2 | -4:4', { pickup: 960 });
    expect(() => varyPhrase(phrase, [{ way: 'sequenced', harmony: 'I7 | IV7' }])).toThrow(
      expect.objectContaining({
        code: 'PHRASE_INVALID',
        value: 960,
        expected: 'a phrase without a pickup',
        where: { path: 'pickup' },
      }),
    );
  });
});
