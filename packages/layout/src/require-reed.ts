import { type ErrorCode, type ErrorPlace, requireInteger } from '@reedplate/pitch';

/** Lowest reed: a valved bend two semitones below it is still a MIDI number. */
const LOWEST_REED = 2;
/** Highest reed: an overbend above it is still a MIDI number. */
const HIGHEST_REED = 126;

/**
 * The MIDI number of a reed, if it is one.
 *
 * @throws ReedplateError with the code asked for
 */
export function requireReed(pitch: unknown, code: ErrorCode, where: ErrorPlace): number {
  const min = LOWEST_REED;
  const max = HIGHEST_REED;
  return requireInteger(pitch, { min, max, what: 'the MIDI number of a reed', code, where });
}
