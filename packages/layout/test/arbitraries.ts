import { TONICS } from '@reedplate/pitch';
import fc from 'fast-check';
import { makeHarp, makeTuning, REGISTERS, TECHNIQUE_LEVELS, TUNINGS } from '../src/index.js';

const reeds = (length: number) =>
  fc.array(fc.integer({ min: 48, max: 84 }), { minLength: length, maxLength: length });

/** A tuning nobody has made yet: any reeds in one to sixteen holes. */
export const anyTuning = fc
  .integer({ min: 1, max: 16 })
  .chain((holes) =>
    fc.record({
      blow: reeds(holes),
      draw: reeds(holes),
      label: fc.constantFrom('C', 'G', 'Am', 'F#', 'Ebm'),
      labelPosition: fc.constantFrom(1 as const, 2 as const),
    }),
  )
  .map((spec) => makeTuning({ id: 'any', ...spec }));

/** A tuning of the catalogue or one nobody has made yet. */
export const tuning = fc.oneof(fc.constantFrom(...TUNINGS), anyTuning);

export const tonic = fc.constantFrom(...TONICS);
export const level = fc.constantFrom(...TECHNIQUE_LEVELS);
export const register = fc.constantFrom(...REGISTERS);

/** Any harp of the standard register in any of those tunings. */
export const harp = fc
  .record({ tuning, tonic })
  .map(({ tuning: chosen, tonic: key }) => makeHarp(key, { tuning: chosen }));
