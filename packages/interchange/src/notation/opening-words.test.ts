import { FEELS } from '@reedplate/form';
import { describe, expect, it } from 'vitest';
import { openingWords } from './opening-words.js';

describe('openingWords', () => {
  it.each([
    [{}, ''],
    [{ tempo: 75 }, 'Slow'],
    [{ tempo: 76 }, 'Medium'],
    [{ tempo: 131 }, 'Medium'],
    [{ tempo: 132 }, 'Fast'],
    [{ feel: 'straight' }, 'Even eighths'],
    [{ feel: 'shuffle', tempo: 96 }, 'Medium, shuffle'],
    [{ feel: 'slow-12/8', tempo: 50 }, 'Slow 12/8'],
  ] as const)('openingWords of %j is %j', (opening, said) => {
    expect(openingWords(opening)).toBe(said);
  });

  it('openingWords has words for every feel', () => {
    for (const feel of FEELS) expect(openingWords({ feel })).toMatch(/^[A-Z]/u);
  });
});
