import { describe, expect, test } from 'vitest';
import { examples } from './examples.js';

describe('examples', () => {
  test('examples says one example or several', () => {
    expect(examples('reedplate forms')).toBe('\nExample:\n  reedplate forms');
    expect(examples('a', 'b')).toBe('\nExamples:\n  a\n  b');
  });
});
