import { makeHarp, soundings, TECHNIQUE_LEVELS, TUNINGS } from '@reedplate/layout';
import { parseChord } from '@reedplate/pitch';
import { parseTab } from '@reedplate/tab';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyChord, anyTonic } from '../arbitraries.fixture.js';
import { suggester } from './suggest.js';

const LANDINGS = ['1', 'b3', '3', 'b7', '7'];
const anyPitch = fc.integer({ min: 0, max: 127 });
const anyHarp = fc
  .record({ tuning: fc.constantFrom(...TUNINGS.map(({ id }) => id)), key: anyTonic })
  .map(({ tuning, key }) => makeHarp(key, { tuning }));

describe('suggester by listing', () => {
  it('suggester gives a root, third or seventh that the harp sounds at the level, natural where it has one', () => {
    const level = fc.constantFrom(...TECHNIQUE_LEVELS);
    fc.assert(
      fc.property(anyChord, anyHarp, level, anyPitch, (chord, harp, at, pitch) => {
        const found = suggester({ harp, level: at })(chord, pitch);
        const candidates = soundings(harp, { level: at }).filter(({ pitch: other }) =>
          chord.tones.some(
            ({ pitchClass, degree }) => pitchClass === other % 12 && LANDINGS.includes(degree),
          ),
        );
        if (candidates.length === 0) {
          expect(found).toBeNull();
          return;
        }
        expect(candidates).toContainEqual(found?.sounding);
        expect(LANDINGS).toContain(found?.degree);
        // Nothing is suggested that has something easier no farther away.
        const away = Math.abs((found?.pitch ?? 999) - pitch);
        const easier = candidates.filter(
          ({ pitch: other, depth, hole }) =>
            depth === 0 && hole >= 2 && hole < 7 && Math.abs(other - pitch) <= away - 3,
        );
        expect(easier).toEqual([]);
        const natural = candidates.filter((one) => one.pitch === found?.pitch && one.depth === 0);
        expect(found?.sounding?.depth === 0).toBe(natural.length > 0);
      }),
      { numRuns: 100 },
    );
  });

  it('suggester writes tab that reads back as its sounding', () => {
    fc.assert(
      fc.property(anyChord, anyTonic, fc.integer({ min: 48, max: 96 }), (chord, key, pitch) => {
        const harp = makeHarp(key);
        const found = suggester({ harp })(chord, pitch);
        fc.pre(found !== null);
        const { hole, breath, depth } = found?.sounding ?? {};
        expect(parseTab(found?.tab ?? '')).toEqual([[{ hole, breath, bend: depth, over: false }]]);
      }),
    );
  });

  it('suggester gives the note itself where it is one already', () => {
    fc.assert(
      fc.property(anyChord, anyPitch, (chord, pitch) => {
        const landing = chord.tones.find(
          ({ pitchClass, degree }) => pitchClass === pitch % 12 && LANDINGS.includes(degree),
        );
        fc.pre(landing !== undefined);
        expect(suggester({})(chord, pitch)).toMatchObject({ pitch, degree: landing?.degree });
      }),
    );
  });

  it('suggester names the tone as the chord spells it', () => {
    expect(suggester({})(parseChord('Db7'), 59)?.name).toBe('Cb4');
    expect(suggester({})(parseChord('B7'), 63)?.name).toBe('D#4');
  });

  // Second position on a C harp: who is on 2 draw finds IV on 4 blow and V on 4 draw, not on the
  // bend that lies nearer. Common practice.
  it.each([
    ['C7', '+4'],
    ['D7', '-4'],
    ['G7', '-2'],
  ])('suggester leads from 2 draw to the root of %s on %s', (chord, tab) => {
    expect(suggester({ harp: makeHarp('C') })(parseChord(chord), 67)?.tab).toBe(tab);
  });

  it.each([[{ level: 'bend' as 'bends' }], [{ dialect: 'signs' as 'plus-minus' }]])(
    'suggester refuses %j with a harp or without',
    (wrong) => {
      for (const options of [wrong, { ...wrong, harp: makeHarp('C') }]) {
        expect(() => suggester(options)).toThrow(
          expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
        );
      }
    },
  );
});
