import { makeHarp, makeTuning } from '@reedplate/layout';
import { parseChord, TWELVE_KEYS, toPitchClass } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { harp } from '../test/arbitraries.js';
import { wholeChordOn } from './whole-chord.js';

const HARP = makeHarp('C');
const on = (symbol: string, any = HARP): string | undefined => {
  const whole = wholeChordOn(any, parseChord(symbol));
  return whole && `${whole.breath} ${whole.from}-${whole.to}`;
};

describe('wholeChordOn', () => {
  // Groups of neighbouring holes that spell a chord on a C harp; computed, and common practice.
  it.each([
    ['C', 'blow 1-10'],
    ['C7', 'blow 1-10'],
    ['G', 'draw 1-4'],
    ['G7', 'draw 1-5'],
    ['G9', 'draw 1-10'],
    ['Dm', 'draw 4-6'],
    ['Bdim', 'draw 3-5'],
    ['Bm7b5', 'draw 3-10'],
    ['F', undefined],
    ['D', undefined],
    ['D7', undefined],
    ['Am', undefined],
    ['Em', undefined],
  ])('finds %s of a C harp on %s', (symbol, expected) => {
    expect(on(symbol)).toBe(expected);
  });

  it('needs root, third and fifth, and lets the seventh be absent', () => {
    expect(on('Cmaj7')).toBe('blow 1-10');
    expect(on('Dm7')).toBe('draw 4-6');
  });

  it('takes the longest run, the lower and blow first on a tie', () => {
    const twice = makeTuning({
      id: 'twice',
      blow: 'C4 E4 G4 F4 C5 E5 G5',
      draw: 'C4 E4 G4 D4 D5 F5 A5',
    });
    expect(on('C', makeHarp('C', { tuning: twice }))).toBe('blow 1-3');
    expect(on('Dm', makeHarp('C', { tuning: twice }))).toBe('draw 4-7');
  });

  it('goes by the length of a run, wherever on the harp it lies', () => {
    const longer = makeTuning({
      id: 'longer',
      blow: 'C4 E4 G4 F4 C5 E5 G5 C6',
      draw: 'D4 A4 B4 D4 D5 F5 A5 D6',
    });
    expect(on('C', makeHarp('C', { tuning: longer }))).toBe('blow 5-8');
    const shorter = makeTuning({
      id: 'shorter',
      blow: 'C4 E4 G4 C5 F5 C6 E6 G6',
      draw: 'D4 A4 B4 D5 D5 F5 A5 D6',
    });
    expect(on('C', makeHarp('C', { tuning: shorter }))).toBe('blow 1-4');
  });

  it('finds the minor chords that a minor tuning is made for', () => {
    const minor = makeHarp('Gm', { tuning: 'natural-minor' });
    expect(on('Gm', minor)).toBe('draw 1-4');
    expect(on('Cm', minor)).toBe('blow 1-10');
    expect(on('D7', minor)).toBeUndefined();
  });

  it('never sounds a note outside the chord, and leaves none of the triad out', () => {
    const chord = fc
      .tuple(fc.constantFrom(...TWELVE_KEYS), fc.constantFrom('', 'm', '7', 'm7', 'dim', '9'))
      .map(([{ tonic }, quality]) => parseChord(`${tonic}${quality}`));
    fc.assert(
      fc.property(harp, chord, (any, wanted) => {
        const whole = wholeChordOn(any, wanted);
        if (whole === undefined) return;
        const { breath, from, to } = whole;
        const played = any.holes.slice(from - 1, to).map((reeds) => toPitchClass(reeds[breath]));
        const tones = wanted.tones.map(({ pitchClass }) => pitchClass);
        expect(played.every((pitchClass) => tones.includes(pitchClass))).toBe(true);
        for (const tone of tones.slice(0, 3)) expect(played).toContain(tone);
      }),
    );
  });
});
