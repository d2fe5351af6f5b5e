import { makeHarp, TUNINGS } from '@reedplate/layout';
import { chordSuffixes } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chordAvailability } from './availability.js';
import { describeWarning } from './describe-warning.js';
import { PLAYING_STYLES } from './styles.js';

const harp = makeHarp('C');

/** The warnings about a chord, in words. */
function said(symbol: string, options: Parameters<typeof chordAvailability>[2] = {}) {
  const { chord, warnings } = chordAvailability(symbol, harp, options);
  const { level = 'bends' } = options;
  return warnings.map((warning) => describeWarning(warning, { chord, level }));
}

describe('describeWarning', () => {
  it('describeWarning says what a C harp lacks of the V of a blues in G', () => {
    expect(said('D7', { level: 'natural' })).toContain('the 3 of D7 is not there unbent');
    expect(said('D7')).toContain('no D7 chord lies on neighbouring holes');
  });

  it('describeWarning says of a minor third over V what each style hears in it', () => {
    const inMajor = said('D7', { style: 'major' });
    expect(inMajor.some((text) => text.includes('usual in a blues, wrong in a major tune'))).toBe(
      true,
    );
  });

  it('describeWarning is one sentence without a gap, whatever the harp, chord and style', () => {
    const cases = fc.record({
      key: fc.constantFrom('C', 'A', 'Bb', 'F#'),
      tuning: fc.constantFrom(...TUNINGS),
      quality: fc.constantFrom(...chordSuffixes()),
      style: fc.constantFrom(...PLAYING_STYLES),
      level: fc.constantFrom('natural' as const, 'bends' as const, 'overbends' as const),
    });
    fc.assert(
      fc.property(cases, ({ key, tuning, quality, style, level }) => {
        const own = makeHarp(key, { tuning });
        const { chord, warnings } = chordAvailability(`F${quality}`, own, { style, level });
        for (const warning of warnings) {
          const text = describeWarning(warning, { chord, level });
          expect(text).toContain(chord.symbol);
          expect(text).not.toMatch(/undefined|null|\(\)| {2}|^[A-Z]|\.$/u);
        }
      }),
    );
  });

  it('describeWarning names no tone where a note clashes with none of them', () => {
    const [warning] = chordAvailability('D7', harp).warnings.filter(({ clash }) => clash);
    if (warning?.clash === undefined) throw new Error('D7 has a clash on a C harp');
    const { against: _, ...clash } = warning.clash;
    const text = describeWarning({ ...warning, clash }, { chord: 'D7' });
    expect(text).not.toMatch(/against|undefined/u);
    expect(describeWarning(warning, { chord: 'D7' })).toMatch(/against its 3: usual in a blues/u);
    const other = { ...warning, clash: { ...warning.clash, above: '7' as const } };
    expect(describeWarning(other, { chord: 'D7' })).not.toMatch(/usual/u);
  });

  it.each([
    [{ code: 'NO_SUCH', degrees: [] }, {}],
    [{ code: 'NO_TONE' }, {}],
    [{ code: 'CLASHING_CHORD', degrees: [] }, {}],
    [null, {}],
    [{ code: 'NO_TONE', degrees: ['3'] }, { level: 'expert' }],
  ])('describeWarning refuses %j of %j', (warning, of) => {
    expect(() => describeWarning(warning as never, { chord: 'G7', ...(of as object) })).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
    );
  });
});
