import { ReedplateError, requireInteger } from '@reedplate/pitch';

/** A part of a study that one process of several does: every so-manieth tune, from one of the first on. */
export interface StudyShare {
  /** Which part, from 1. */
  readonly part: number;
  /** How many parts there are. */
  readonly of: number;
}

/** Most parts: more than any cluster runs at once. */
const MOST = 100_000;

/**
 * A share, checked.
 *
 * @throws ReedplateError `NUMBER_RANGE`, `STUDY_INVALID` for what is no share
 */
export function requireShare(share: StudyShare): StudyShare {
  if (typeof share !== 'object' || share === null) {
    const expected = 'a part of a study: { part, of }';
    throw new ReedplateError({ code: 'STUDY_INVALID', value: share, expected });
  }
  const of = requireInteger(share.of, { min: 1, max: MOST, what: 'a number of parts' });
  return { part: requireInteger(share.part, { min: 1, max: of, what: 'a part' }), of };
}

/** Whether a tune is studied in a share; every one is where nothing is shared out. */
export function isInShare(number: number, share: StudyShare | undefined): boolean {
  return share === undefined || (number - 1) % share.of === share.part - 1;
}
