import { describe, expect, test } from 'vitest';
import { isFileName } from './file-words.js';

describe('isFileName', () => {
  test.each(['mine.json', './mine', 'ours/mine', 'C:\\mine', '-'])(
    'isFileName takes %j for one',
    (word) => {
      expect(isFileName(word)).toBe(true);
    },
  );

  test.each(['standard', 'natural-minor', '', '| I7 | V7.5 |', 'I7 | ./.'])(
    'isFileName does not take %j for one',
    (word) => {
      expect(isFileName(word)).toBe(false);
    },
  );
});
