import { describe, expect, it } from 'vitest';
import { findPhrases, type PhraseFilter } from './find-phrases.js';

describe('findPhrases', () => {
  it('findPhrases gives the phrases of a feel, and no others', () => {
    const straight = findPhrases({ feel: 'straight' });
    expect(straight.length).toBeGreaterThan(0);
    expect(straight.length).toBeLessThan(findPhrases().length);
    expect(straight.every(({ feel }) => feel === 'straight')).toBe(true);
  });

  it.each([
    [{ kind: 'lik' }, 'OPTION_UNKNOWN', 'lick'],
    [{ mode: 'minr' }, 'OPTION_UNKNOWN', 'minor'],
    [{ feel: 'shufle' }, 'OPTION_UNKNOWN', 'shuffle'],
    [{ grades: 1 }, 'OPTION_UNKNOWN', 'grade'],
  ])('findPhrases refuses %j, and knows what was meant', (filter, code, nearest) => {
    expect(() => findPhrases(filter as PhraseFilter)).toThrow(
      expect.objectContaining({ code, nearest }),
    );
  });

  it.each([{ position: 13 }, { position: 2.5 }, { grade: 0 }])(
    'findPhrases refuses %j',
    (filter) => {
      expect(() => findPhrases(filter as PhraseFilter)).toThrow(
        expect.objectContaining({ code: 'NUMBER_RANGE' }),
      );
    },
  );
});
