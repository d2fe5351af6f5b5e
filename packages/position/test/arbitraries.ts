import { editTuning, type Harp, makeHarp, TECHNIQUE_LEVELS, TUNINGS } from '@reedplate/layout';
import { type KeyName, scaleNames, TONICS } from '@reedplate/pitch';
import fc from 'fast-check';

export const tonic = fc.constantFrom(...TONICS);
export const keyName = fc
  .tuple(tonic, fc.boolean())
  .map(([name, isMinor]): KeyName => (isMinor ? `${name}m` : name));
export const level = fc.constantFrom(...TECHNIQUE_LEVELS);
export const tuning = fc.constantFrom(...TUNINGS);
export const scale = fc.constantFrom(...scaleNames());

/** A harp of the catalogue, as it is or with a reed of hole 3 retuned by up to a major third. */
export const harp = fc
  .record({
    tuning,
    tonic,
    breath: fc.constantFrom('blow' as const, 'draw' as const),
    by: fc.integer({ min: -4, max: 4 }),
  })
  .map(({ tuning: from, tonic: key, breath, by }): Harp => {
    const edited = editTuning(from, [{ hole: 3, breath, by }], { id: 'edited' });
    return makeHarp(key, { tuning: by === 0 ? from : edited });
  });
