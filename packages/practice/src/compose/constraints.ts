import type { EffortModelLike } from '@reedplate/playability';
import type { MelodyModel } from './melody-model.js';
import type { Density } from './rhythm.js';
import type { RhythmCell } from './rhythm-cells.js';

/** How a composed line ends each chorus: on the `root` of its chord, a `chord-tone`, or `any` note. */
export const LINE_ENDINGS = Object.freeze(['root', 'chord-tone', 'any'] as const);

/** How a composed line ends; see {@link LINE_ENDINGS}. */
export type LineEnding = (typeof LINE_ENDINGS)[number];

/** What must hold of the pitches of a composed line, each by the name that an error gives it. */
export interface MustHold {
  /** Whether the note that sounds as a chord begins, or first after it, is one of its tones. */
  readonly changes: boolean;
  /** Within how many notes another than a chord tone goes on to a chord tone. */
  readonly resolve: number;
  /** Most semitones from note to note within a phrase. */
  readonly leap: number;
  readonly ending: LineEnding;
  /** Most points of effort a bar, on the average of a phrase; `undefined` for no bound. */
  readonly effort: number | undefined;
  /** Lowest and highest MIDI number. */
  readonly range: { readonly lowest: number; readonly highest: number };
}

/** The names of what must hold; `level` is the soundings allowed. */
export const MUST_HOLD = Object.freeze([
  'effort',
  'leap',
  'resolve',
  'ending',
  'changes',
  'range',
] as const);

/** Nothing asked, but what a harp has. */
export const NOTHING_HELD: MustHold = Object.freeze({
  changes: false,
  resolve: Infinity,
  leap: Infinity,
  ending: 'any',
  effort: undefined,
  range: Object.freeze({ lowest: 0, highest: 127 }),
});

/** What a line is drawn by, besides what must hold. */
export interface Liking {
  readonly model: MelodyModel;
  readonly cells: readonly RhythmCell[];
  readonly density: Density;
  readonly effortModel: EffortModelLike;
}
