import { makeHarp } from '@reedplate/layout';
import { parseChord } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import {
  chordVoicings,
  guideToneVoicings,
  rootVoicings,
  targetsWithin,
  type VoicingLimits,
} from './voicing.js';

const harp = makeHarp('C');
const NATURAL: VoicingLimits = { level: 'natural', lowest: 0, highest: 127 };

describe('rootVoicings', () => {
  it('rootVoicings gives every root', () => {
    const roots = rootVoicings(parseChord('G7'), harp, NATURAL);
    expect(roots.map(({ soundings }) => soundings[0].pitch)).toEqual([67, 67, 79, 91]);
  });

  it('rootVoicings gives any tone of a chord whose root cannot be had', () => {
    const voicings = rootVoicings(parseChord('Eb'), harp, NATURAL);
    expect(new Set(voicings.flatMap(({ degrees }) => degrees))).toEqual(new Set(['3']));
  });

  it('rootVoicings is empty where the harp has nothing of the chord', () => {
    expect(rootVoicings(parseChord('Ebm'), harp, NATURAL)).toEqual([]);
  });
});

describe('guideToneVoicings', () => {
  it('guideToneVoicings gives thirds and sevenths', () => {
    const voicings = guideToneVoicings(parseChord('G7'), harp, NATURAL);
    expect(new Set(voicings.flatMap(({ degrees }) => degrees))).toEqual(new Set(['3', 'b7']));
  });

  it('guideToneVoicings gives thirds and sixths of a chord without a seventh', () => {
    const voicings = guideToneVoicings(parseChord('C6'), harp, NATURAL);
    expect(new Set(voicings.flatMap(({ degrees }) => degrees))).toEqual(new Set(['3', '6']));
  });
});

describe('chordVoicings', () => {
  const placesOf = (symbol: string, limits = NATURAL): readonly string[] =>
    chordVoicings(parseChord(symbol), harp, limits).map(
      ({ soundings }) => `${soundings[0].breath} ${soundings.map(({ hole }) => hole).join('')}`,
    );

  it('chordVoicings prefers neighbours that have all tones, then the triad', () => {
    expect(placesOf('G7')).toEqual(['draw 12345', 'draw 2345']);
    expect(placesOf('C7')).toContain('blow 123');
  });

  it('chordVoicings prefers root and third, then three tones without the root', () => {
    expect(placesOf('Em7')).toContain('blow 23');
    expect(placesOf('Am7').every((place) => /^blow (?:\d{3,5}|\d*10)$/u.test(place))).toBe(true);
    const gm7 = chordVoicings(parseChord('Gm7'), makeHarp('Bb'), NATURAL);
    expect(gm7[0]?.soundings.map(({ hole, breath }) => `${breath} ${hole}`)).toEqual([
      'blow 1',
      'blow 2',
      'blow 3',
    ]);
    expect(gm7[0]?.degrees).toEqual(['b3', '5', 'b7']);
  });

  it('chordVoicings takes two neighbours before a split', () => {
    // Draw 2 and 6 hold seventh and root of A7, with three holes to block between them.
    expect(placesOf('A7')).toEqual(['blow 23', 'blow 56', 'blow 89']);
  });

  it('chordVoicings takes the narrowest splits where no neighbours will do', () => {
    expect(placesOf('D7')).toEqual(['draw 46', 'draw 68', 'draw 810']);
  });

  it('chordVoicings falls to single roots where no two tones lie together', () => {
    expect(placesOf('D7', { ...NATURAL, highest: 64 })).toEqual(['draw 1']);
  });

  it('chordVoicings keeps within the range, every hole of a shape', () => {
    const low = chordVoicings(parseChord('C'), harp, { ...NATURAL, highest: 72 });
    expect(low.every(({ soundings }) => soundings.every(({ pitch }) => pitch <= 72))).toBe(true);
  });
});

describe('targetsWithin', () => {
  it('targetsWithin takes both bounds as allowed', () => {
    const targets = targetsWithin(parseChord('C'), harp, {
      level: 'natural',
      lowest: 60,
      highest: 67,
    });
    expect(targets.map(({ sounding }) => sounding.pitch)).toEqual([60, 64, 67, 67]);
  });
});
