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
  it('suggester gives the nearest root, third or seventh that the harp sounds at the level', () => {
    const level = fc.constantFrom(...TECHNIQUE_LEVELS);
    fc.assert(
      fc.property(anyChord, anyHarp, level, anyPitch, (chord, harp, at, pitch) => {
        const found = suggester({ harp, level: at })(chord, pitch);
        const candidates = soundings(harp, { level: at })
          .filter((sounding) => Math.abs(sounding.pitch - pitch) <= 36)
          .filter(({ pitch: other }) =>
            chord.tones.some(
              ({ pitchClass, degree }) => pitchClass === other % 12 && LANDINGS.includes(degree),
            ),
          );
        if (candidates.length === 0) {
          expect(found).toBeNull();
          return;
        }
        const away = candidates.map((sounding) => Math.abs(sounding.pitch - pitch));
        expect(Math.abs((found?.pitch ?? 999) - pitch)).toBe(Math.min(...away));
        expect(LANDINGS).toContain(found?.degree);
        const ways = candidates.filter((sounding) => sounding.pitch === found?.pitch);
        expect(ways).toContainEqual(found?.sounding);
        // A natural note where that pitch has one.
        const hasNatural = ways.some(({ depth }) => depth === 0);
        expect(found?.sounding?.depth === 0).toBe(hasNatural);
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

  it('suggester takes the lower of two as near, and the easier before the lower', () => {
    // D lies as near to C as to E.
    expect(suggester({})(parseChord('C7'), 62)?.name).toBe('C4');
    const harp = makeHarp('C');
    // Between D4 (natural) and F#4 (a bend) of D7: the natural note.
    expect(suggester({ harp, level: 'bends' })(parseChord('D7'), 64)?.tab).toBe('-1');
  });

  it.each([[{ level: 'bend' as 'bends' }], [{ dialect: 'signs' as 'sign' }]])(
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
