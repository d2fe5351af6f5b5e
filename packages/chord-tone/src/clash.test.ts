import { parseChord } from '@reedplate/pitch';
import { describe, expect, test } from 'vitest';
import { clashOf } from './clash.js';

describe('clashOf', () => {
  test('clashOf names the tone below where a note lies between two', () => {
    // E and G flat, with F between them.
    expect(clashOf('4', parseChord('C7b5'), 'major')?.against).toBe('3');
    expect(clashOf('4', parseChord('C7'), 'major')?.against).toBe('3');
  });
});
