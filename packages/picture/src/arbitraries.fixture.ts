import { FORMS, INTRO_KINDS, makeChart } from '@reedplate/form';
import { makeHarp, TECHNIQUE_LEVELS, TUNINGS } from '@reedplate/layout';
import { parseKey, TONICS, TWELVE_KEYS } from '@reedplate/pitch';
import fc from 'fast-check';
import { THEME_IDS } from './theme/themes.js';

/** Any harp of the catalogue. */
export const anyHarp = fc
  .tuple(fc.constantFrom(...TUNINGS), fc.constantFrom(...TWELVE_KEYS))
  .map(([tuning, key]) => {
    const isMinor = parseKey(tuning.label).mode === 'minor';
    return makeHarp(isMinor ? parseKey(`${key.tonic}m`) : key, { tuning });
  });

/** Any form of the catalogue in any key, once or more often. */
export const anyChart = fc
  .record({
    form: fc.constantFrom(...FORMS),
    tonic: fc.constantFrom(...TONICS),
    choruses: fc.integer({ min: 1, max: 3 }),
    intro: fc.constantFrom(undefined, ...INTRO_KINDS),
  })
  .map(({ form, tonic, choruses, intro }) => {
    const key = parseKey(form.mode === 'minor' ? minorOf(tonic) : tonic);
    const options = { choruses };
    const withIntro = form.bars.length === 12 && intro !== undefined;
    return makeChart(form, key, withIntro ? { ...options, intro } : options);
  });

const minorOf = (tonic: string): string =>
  `${['Db', 'Gb', 'Cb', 'Ab'].includes(tonic) ? 'C' : tonic}m`;

/** Any level. */
export const anyLevel = fc.constantFrom(...TECHNIQUE_LEVELS);

/** Any look: theme and width, with at least the room that the largest text needs. */
export const anyLook = fc.record({
  theme: fc.constantFrom(...THEME_IDS),
  width: fc.constantFrom(320, 480, 680, 1200),
});
