import { describe, expect, it } from 'vitest';
import { withSigns } from './with-signs.js';

describe('withSigns', () => {
  it.each([
    ['Bb', 'B♭'],
    ['Bb7', 'B♭7'],
    ['F#m7b5', 'F♯m7♭5'],
    ['bVII7', '♭VII7'],
    ['#ivdim7', '♯ivdim7'],
    ['C/Bb', 'C/B♭'],
    ['bb7', '♭♭7'],
    ['Ebb', 'E♭♭'],
    ['V7/bVI', 'V7/♭VI'],
    ['7#9', '7♯9'],
    ['N.C.', 'N.C.'],
    ['sub', 'sub'],
  ])('withSigns of %s is %s', (name, signed) => {
    expect(withSigns(name)).toBe(signed);
  });
});
