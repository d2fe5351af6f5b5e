import type { Hex } from './contrast.js';

/** What a chord is in its key, for its colour and mark: on the first, fourth or fifth step, or other. */
export type ChordRole = 'one' | 'four' | 'five' | 'other';

/** A colour in its two strengths. */
export interface Shade {
  /** Fills behind text. */
  readonly tint: Hex;
  /** Outlines, marks and text on paper or on the tint. */
  readonly strong: Hex;
}

/** How pictures look: plain data, so that a caller can make one of its own from another. */
export interface Theme {
  readonly id: string;
  /** What everything lies on. */
  readonly paper: Hex;
  /** Text. */
  readonly ink: Hex;
  /** Text that matters less. */
  readonly faint: Hex;
  /** Lines. */
  readonly rule: Hex;
  readonly chords: Readonly<Record<ChordRole, Shade>>;
  /**
   * Size of text in pixels, from 10 up. Where room is short text is set smaller, down to 10.
   * @minimum 10
   * @maximum 96
   */
  readonly textSize: number;
  /** Families in CSS; the widths that pictures count with hold for the usual fonts without serifs. */
  readonly font: string;
}
