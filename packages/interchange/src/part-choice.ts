import { requireShape } from '@reedplate/pitch';
import type { PiecePart } from './piece.js';

/** Why a part is taken for the tune, in words for people. */
export const PART_REASONS = {
  asked: 'it was asked for',
  only: 'there is no other',
  first: 'it is the first',
  name: 'its name says so',
  program: 'its instrument plays melodies',
  'single-notes': 'it plays one note at a time',
  range: 'it lies where melodies lie',
} as const;
Object.freeze(PART_REASONS);

/** Why a part is taken for the tune. */
export type PartReason = keyof typeof PART_REASONS;

/** Which part of a file is the line, and why. */
export interface PartChoice {
  /**
   * Its number among the parts with notes, from 1.
   * @minimum 1
   * @asType integer
   */
  readonly part: number;
  /** Its name; empty where the file gives none. */
  readonly name: string;
  /** What speaks for it, the weightiest first. */
  readonly reasons: readonly PartReason[];
  /** Numbers of the parts that have as much to say for them; the first of all is taken. */
  readonly ties: readonly number[];
  /** Whether something speaks against it, as against a bass, and against all others more. */
  readonly doubtful: boolean;
}

const CHOICE_SHAPE = { part: 'number', name: 'text', reasons: 'list', ties: 'list' } as const;
const CHOICE = {
  what: 'the choice of a part, as readMidi gives it',
  code: 'OPTION_UNKNOWN',
} as const;

/** What a reader that looks for the tune finds. */
export type FoundPart = Omit<PartChoice, 'name'>;

/** A choice among parts, with the part itself. */
export interface ChosenPart {
  readonly part: PiecePart;
  readonly choice: PartChoice;
}

/**
 * A choice in words: which part, why, and which others might be meant.
 *
 * @example
 * ```ts
 * import { sayPartChoice } from '@reedplate/interchange';
 *
 * sayPartChoice({ part: 2, name: 'Harp', reasons: ['name', 'range'], ties: [3], doubtful: false });
 * // => 'part 2 (Harp): its name says so, it lies where melodies lie; as likely: part 3'
 * ```
 */
export function sayPartChoice(choice: PartChoice): string {
  const { part, name, reasons, ties, doubtful } = requireShape(choice, CHOICE_SHAPE, CHOICE);
  const why = reasons.map((reason) => PART_REASONS[reason]).join(', ');
  const others = ties.length === 0 ? '' : `; as likely: part ${ties.join(', ')}`;
  const doubt = doubtful ? '; it does not look like a melody, and no other part does' : '';
  return `part ${part}${name === '' ? '' : ` (${name})`}: ${why || 'nothing better is there'}${others}${doubt}`;
}
