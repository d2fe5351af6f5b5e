import { makeHarp } from '@reedplate/layout';
import { parseChord } from '@reedplate/pitch';
import { formatSounding } from '@reedplate/tab';
import { describe, expect, it } from 'vitest';
import { arpeggioFigures } from './arpeggio.js';
import type { VoicingLimits } from './voicing.js';

const harp = makeHarp('C');
const HOME: VoicingLimits = { level: 'natural', lowest: 64, highest: 81 };

function figures(symbol: string, beats: number, limits = HOME): readonly string[] {
  return arpeggioFigures(parseChord(symbol), harp, limits, beats).map((figure) =>
    figure.map(({ soundings }) => formatSounding(soundings[0])).join(' '),
  );
}

function degrees(symbol: string, beats: number, limits = HOME): readonly string[] {
  return arpeggioFigures(parseChord(symbol), harp, limits, beats).map((figure) =>
    figure.map((voicing) => voicing.degrees[0]).join(' '),
  );
}

describe('arpeggioFigures', () => {
  it('arpeggioFigures begins on the root, and goes up through the chord', () => {
    expect(degrees('C', 3)).toEqual(['1 3 5']);
    expect(degrees('G7', 4)).toEqual(['1 3 5 b7']);
  });

  it('arpeggioFigures gives every octave where the range has more than one', () => {
    const wide = { ...HOME, lowest: 0, highest: 127 };
    expect(figures('C', 3, wide).filter((figure) => figure.startsWith('+'))).toEqual([
      '+1 +2 +3',
      '+4 +5 +6',
      '+7 +8 +9',
    ]);
  });

  it('arpeggioFigures goes up and comes back down while the chord lasts', () => {
    expect(degrees('C', 8)).toEqual(['1 3 5 3 1 3 5 3']);
    expect(degrees('G7', 8)).toEqual(['1 3 5 b7 5 3 1 3']);
  });

  it('arpeggioFigures passes over a tone that is not above the root, and goes on', () => {
    // F# of D7 is a bend below 4 draw and none above it.
    const bends = { ...HOME, level: 'bends' } as const;
    expect(figures('D7', 4, bends)).toEqual(['-4 -6 -4 -6']);
    expect(figures('D7', 4)).toEqual(['-4 -6 -4 -6']);
  });

  it('arpeggioFigures stops short where the chord does', () => {
    expect(degrees('G7', 1)).toEqual(['1', '1']);
    expect(degrees('G7', 2)).toEqual(['1 3']);
  });

  it('arpeggioFigures keeps the breath where a pitch can be had on both', () => {
    // G4 is draw 2 and blow 3.
    expect(figures('Em', 3, { ...HOME, highest: 84 })[0]).toBe('+2 -2 -3');
    expect(figures('G', 3)).toEqual(['-2 -3 -4']);
  });

  it('arpeggioFigures passes over what the harp has not', () => {
    expect(degrees('D7', 3)).toEqual(['1 5 1']);
    expect(degrees('D7', 4, { ...HOME, level: 'bends', lowest: 60 })).toContain('1 3 5 b7');
  });

  it('arpeggioFigures begins on another tone only where there is no root', () => {
    expect(degrees('Eb', 2)).toEqual(['3 3', '3 3']);
  });

  it('arpeggioFigures stacks a ninth above the seventh', () => {
    expect(degrees('G9', 5, { ...HOME, highest: 127 })).toContain('1 3 5 b7 9');
  });

  it('arpeggioFigures gives the longest figures where none has all tones', () => {
    expect(degrees('C', 3, { ...HOME, lowest: 70, highest: 77 })).toEqual(['1 3 1']);
    expect(degrees('C', 4, { ...HOME, lowest: 72, highest: 75 })).toEqual(['1 1 1 1']);
  });

  it('arpeggioFigures is empty where the range has no tone of the chord', () => {
    expect(arpeggioFigures(parseChord('Ebm'), harp, HOME, 4)).toEqual([]);
  });
});
