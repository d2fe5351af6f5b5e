/**
 * Blues forms and their variants, written in lead-sheet marks, and charts of them in any key.
 *
 * @packageDocumentation
 */

// Forms: the catalogue, text and data

export { FORMS, type FormId } from './catalogue.js';
export { formById } from './form-by-id.js';
export { type FormatFormOptions, formatForm } from './format-form.js';
export { type FormDetails, makeForm } from './make-form.js';
export { type ParseFormOptions, parseForm } from './parse-form.js';
export { readForm } from './read-form.js';
export { toFeel } from './to-feel.js';
export { type FormByNameOptions, type FormLike, type KnownForms, toForm } from './to-form.js';
export { FEELS, type Feel, type Form, type FormBar, type FormChord } from './types.js';

// Variations

export { withNinths, withSevenths, withTriads } from './chord-colours.js';
export type { ClosingBars } from './closing-bars.js';
export { ENDINGS, type EndingId, withEnding } from './endings.js';
export { INTRO_KINDS, type IntroKind, introBars } from './intro.js';
export { withDoubleLength, withHalfLength } from './length.js';
export { withDiminishedPassing, withTwoFive } from './passing-chords.js';
export { withoutQuickChange, withQuickChange } from './quick-change.js';
export { type ToMinorOptions, toMinor } from './to-minor.js';
export { TURNAROUNDS, type TurnaroundId, withTurnaround } from './turnarounds.js';
export { VARIATIONS, type Variation, varyForm } from './vary-form.js';
export { type BreakHit, type BreakOptions, withBreak } from './with-break.js';

// Charts

export { chartEnd, chordAt, chordAtBeat } from './chord-at.js';
export { chordChanges, nextChange, previousChange } from './chord-changes.js';
export { formOfChart } from './form-of-chart.js';
export { loopOf } from './loop-of.js';
export { type ChartOptions, makeChart } from './make-chart.js';
export type { ChartBreak } from './plan-bars.js';
export { readChart } from './read-chart.js';
export { requireChart } from './require-chart.js';
export type { Chart, ChordSpan } from './types.js';

// Recognition

export { describeRecognition } from './describe-recognition.js';
export { type RecogniseOptions, recogniseForm } from './recognise-form.js';
export type { BarDifference, FormMatch, FormRecognition } from './recognition.js';
export { LEAST_FORM_AGREEMENT, RECOGNITION_WEIGHTS } from './recognition-weights.js';
