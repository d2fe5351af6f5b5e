import { type Chart, FORMS, makeChart } from '@reedplate/form';
import { type Line, makeLine } from '@reedplate/line';
import { chordSuffixes, parseChord, TWELVE_KEYS } from '@reedplate/pitch';
import fc from 'fast-check';

/** A tonic without its mode, for charts in the mode of their form. */
export const anyTonic = fc.constantFrom(...TWELVE_KEYS.map(({ tonic }) => tonic));

/** A chart of any form of the catalogue in 4/4, in any key, once or twice through. */
export const anyChart: fc.Arbitrary<Chart> = fc
  .record({
    form: fc.constantFrom(...FORMS.filter(({ metre }) => metre === '4/4').map(({ id }) => id)),
    key: anyTonic,
    choruses: fc.integer({ min: 1, max: 2 }),
  })
  .map(({ form, key, choruses }) => makeChart(form, key, { choruses }));

/** A chord of any quality on any root. */
export const anyChord = fc
  .record({ root: anyTonic, suffix: fc.constantFrom(...chordSuffixes()) })
  .map(({ root, suffix }) => parseChord(`${root}${suffix}`));

const SIXTEENTH = 240;

/** A melody on the sixteenth grid, with rests, within two octaves and a chart of 12 bars. */
export const anyMelody: fc.Arbitrary<Line> = fc
  .array(
    fc.record({
      wait: fc.integer({ min: 0, max: 4 }),
      length: fc.integer({ min: 1, max: 12 }),
      pitch: fc.integer({ min: 55, max: 79 }),
    }),
    { minLength: 1, maxLength: 60 },
  )
  .map((steps) => {
    let at = 0;
    const notes = steps.map(({ wait, length, pitch }) => {
      const start = (at + wait) * SIXTEENTH;
      at += wait + length;
      return { start, duration: length * SIXTEENTH, pitch };
    });
    return makeLine(notes);
  });

/** Notes anywhere, sounding together or not, some of them past the end of any chart. */
export const anyNotes: fc.Arbitrary<Line> = fc
  .array(
    fc.record({
      start: fc.integer({ min: 0, max: 120_000 }),
      duration: fc.integer({ min: 1, max: 9000 }),
      pitch: fc.integer({ min: 0, max: 127 }),
    }),
    { minLength: 1, maxLength: 40 },
  )
  .map((notes) => makeLine(notes));
