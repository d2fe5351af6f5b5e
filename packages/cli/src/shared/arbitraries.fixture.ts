import { type Chart, ENDINGS, type EndingId, FORMS, makeChart } from '@reedplate/form';
import {
  type Harp,
  makeHarp,
  REGISTERS,
  TECHNIQUE_LEVELS,
  TEMPERAMENTS,
  TUNINGS,
} from '@reedplate/layout';
import { TWELVE_KEYS } from '@reedplate/pitch';
import fc from 'fast-check';

/** The twelve keys, major. */
export const keys = fc.constantFrom(...TWELVE_KEYS);

export const tunings = fc.constantFrom(...TUNINGS);
export const levels = fc.constantFrom(...TECHNIQUE_LEVELS);
export const temperaments = fc.constantFrom(...TEMPERAMENTS);

/** Harps of every tuning and key, in every register that its reeds allow. */
export const harps: fc.Arbitrary<Harp> = fc
  .record({ tuning: tunings, key: keys, register: fc.constantFrom(...REGISTERS) })
  .map(({ tuning, key, register }) => {
    try {
      return makeHarp(key.tonic, { tuning, register });
    } catch {
      // Too high or too low for a reed.
      return makeHarp(key.tonic, { tuning });
    }
  });

/** Charts of every form, with and without what stands around the choruses. */
export const charts: fc.Arbitrary<Chart> = fc
  .record({
    form: fc.constantFrom(...FORMS),
    key: keys,
    choruses: fc.integer({ min: 1, max: 3 }),
    metre: fc.constantFrom('4/4', '12/8', '3/4', undefined),
    intro: fc.constantFrom('from-the-turnaround', undefined),
    ending: fc.boolean(),
  })
  .map(({ form, key, choruses, metre, intro, ending }) => {
    const closing = ENDINGS.find(({ mode }) => mode === form.mode)?.id;
    const isLong = form.bars.length >= 8;
    return makeChart(form, key.tonic, {
      choruses,
      ...(metre === undefined ? {} : { metre }),
      ...(intro === undefined || !isLong ? {} : { intro }),
      ...(!ending || !isLong || closing === undefined ? {} : { ending: closing as EndingId }),
    });
  });
