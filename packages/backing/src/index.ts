/**
 * A band over a chart: bass, chords and drums as timed notes.
 *
 * @packageDocumentation
 */

// Backing
export { type BackingOptions, makeBacking } from './make-backing.js';
