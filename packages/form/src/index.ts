/**
 * Blues forms and their variants, written in lead-sheet marks, and charts of them in any key.
 *
 * @packageDocumentation
 */

// The catalogue
export { FORMS, formById } from './catalogue.js';
// Charts
export { chartEnd, chordAt, chordAtBeat } from './chord-at.js';
export { chordChanges } from './chord-changes.js';
// Variations
export { withNinths, withSevenths, withTriads } from './chord-colours.js';
// Forms as text and as data
export { type FormatFormOptions, formatForm } from './format-form.js';
export { type ChartOptions, makeChart } from './make-chart.js';
export { type FormDetails, makeForm } from './make-form.js';
export { type ParseFormOptions, parseForm } from './parse-form.js';
export { type ToMinorOptions, toMinor } from './to-minor.js';
export {
  type Chart,
  type ChordSpan,
  FEELS,
  type Feel,
  type Form,
  type FormBar,
  type FormChord,
} from './types.js';
