import { makeChart, parseForm } from '@reedplate/form';
import { describe, expect, it } from 'vitest';
import { plainHarmony, rootAbove, soundingChord } from './harmony.js';

const chartOf = (bars: string, pickup = 0) => makeChart(parseForm(bars), 'G', { pickup });
const symbolAt = (bars: string, tick: number, pickup = 0) =>
  soundingChord(chartOf(bars, pickup), tick)?.symbol;

describe('soundingChord', () => {
  it('soundingChord is the chord that sounds', () => {
    expect(symbolAt('I7 | IV7', 3839)).toBe('G7');
    expect(symbolAt('I7 | IV7', 3840)).toBe('C7');
  });

  it('soundingChord of a pickup is the chord it leads to', () => {
    expect(symbolAt('IV7 | I7', 0, 960)).toBe('C7');
  });

  it('soundingChord of a break is the chord before it, or the first where none is before', () => {
    expect(symbolAt('I7 | IV7 | N.C. | V7', 2 * 3840)).toBe('C7');
    expect(symbolAt('N.C. | IV7 | I7', 0)).toBe('C7');
  });

  it('soundingChord is null where no chord ever sounds, and the root is then the tonic', () => {
    expect(soundingChord(chartOf('N.C. | N.C.'), 3840)).toBeNull();
    expect(rootAbove(chartOf('N.C. | N.C.'), 3840)).toBe(0);
  });
});

describe('plainHarmony', () => {
  it('plainHarmony writes repeats out, however many harmonies it has read', () => {
    expect(plainHarmony('I7 | % | IV7')).toBe('| I7 | I7 | IV7 |');
    for (let bars = 1; bars <= 250; bars += 1) {
      const text = Array.from({ length: bars }, () => 'V7').join(' | ');
      expect(plainHarmony(text)).toBe(`| ${text} |`);
    }
    expect(plainHarmony('I7 | % | IV7')).toBe('| I7 | I7 | IV7 |');
  });
});
