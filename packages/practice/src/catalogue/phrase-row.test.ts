import { describe, expect, it } from 'vitest';
import { phraseOfRow } from './phrase-row.js';

describe('phraseOfRow', () => {
  it.each([
    ['-2 -3 -4', 'natural'],
    ["-2 -3' -4", 'bends'],
    ['-4 +5 +6o', 'overbends'],
  ])('phraseOfRow knows the level of %s by its marks: %s', (tab, level) => {
    const row = { id: 'row', kind: 'lick', grade: 3, trains: 'reading', tab } as const;
    expect(phraseOfRow(row, { harmony: 'I7' })).toMatchObject({ level });
  });
});
