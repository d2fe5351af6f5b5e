/**
 * A band over a chart: bass, chords and drums as timed notes.
 *
 * @packageDocumentation
 */

// Feel
export type { KeyChange } from './change-key.js';
// Grooves
export {
  BASS_FIGURES,
  type BassFigure,
  COMPING_FIGURES,
  type CompingFigure,
  DRUM_NAMES,
  type DrumName,
  type Groove,
  type Pattern,
} from './groove.js';
export { GROOVES, type GrooveId } from './grooves.js';
// Backing
export { type BackingOptions, makeBacking, type PartOptions } from './make-backing.js';
// Sound
export { type BandEvent, type BandEventOptions, bandEvents } from './sound/band-events.js';
export { type EventSoundOptions, eventSound } from './sound/event-sound.js';
export { type BandSound, type RenderBandOptions, renderBand } from './sound/render-band.js';
export type { ToneName } from './sound/tone-sounds.js';
export {
  BACKING_CAUTIONS,
  type BackingPart,
  type BackingSummary,
  summariseBacking,
} from './summarise-backing.js';
export {
  SHUFFLE_RATIO,
  SWING_BY_ROLE,
  SWING_ROLES,
  type SwingRole,
  swingRatio,
} from './swing.js';
