import { createHash } from 'node:crypto';
import manifest from '../package.json' with { type: 'json' };
import { canonicalJson } from './canonical-json.js';
import type { StudySetup } from './study-setup.js';

/** Version of this package, and of all it stands on: they share one. */
export const STUDY_VERSION: string = manifest.version;

/** Signs of a digest: 64 bits, so that two setups of one person never share theirs by chance. */
const LENGTH = 16;

/** Setups are frozen, and a study asks once a tune. */
const DIGESTS = new WeakMap<StudySetup, string>();

/**
 * A short name of all that a result rests on besides its tune: the version of the packages, the model
 * with its weights, tunings with their reeds, positions, levels or players, octaves and tempo. Results of
 * equal digest can be put together; 16 signs of SHA-256 over the setup as JSON, fields in the order of their names.
 *
 * @param setup as `makeStudySetup` gives it
 * @example
 * ```ts
 * import { makeStudySetup, studyDigest } from '@reedplate/study';
 *
 * const digest = studyDigest(makeStudySetup({ positions: [2] }));
 * digest.length; // => 16
 * digest === studyDigest(makeStudySetup({ positions: [2], tempo: 120 })); // => false
 * ```
 */
export function studyDigest(setup: StudySetup): string {
  const known = DIGESTS.get(setup);
  if (known !== undefined) return known;
  const text = canonicalJson({ version: STUDY_VERSION, setup });
  const digest = createHash('sha256').update(text).digest('hex').slice(0, LENGTH);
  DIGESTS.set(setup, digest);
  return digest;
}
