/**
 * A band over a chart: bass, chords and drums as timed notes.
 *
 * @packageDocumentation
 */

// Backing
export { type BackingOptions, makeBacking } from './make-backing.js';
export {
  BACKING_CAUTIONS,
  type BackingPart,
  type BackingSummary,
  summariseBacking,
} from './summarise-backing.js';
