import { describe, expect, test } from 'vitest';
import { chordRows, scaleRows } from '../scripts/from-tonal.js';
import { CHORD_TYPES } from './chord-types.js';
import { SCALE_TYPES } from './scale-types.js';

// `npm run dictionaries` mends what fails here.
describe('the dictionaries', () => {
  test('CHORD_TYPES is what is made from the tonal that is installed', () => {
    expect(CHORD_TYPES).toEqual(chordRows());
  });

  test('SCALE_TYPES is what is made from the tonal that is installed', () => {
    expect(SCALE_TYPES).toEqual(scaleRows());
  });
});
