/**
 * What a source is. Posts are letters to a list and answers in a forum; `practice` is what players and
 * teachers commonly do, `memory` a value that was not looked up, `computed` one worked out by hand.
 */
export type SourceKind =
  | 'textbook'
  | 'paper'
  | 'standard'
  | 'encyclopaedia'
  | 'article'
  | 'post'
  | 'wiki'
  | 'program'
  | 'practice'
  | 'memory'
  | 'computed';

/** A row of the bibliography. */
export interface Source {
  readonly id: string;
  readonly kind: SourceKind;
  readonly author: string;
  readonly title: string;
  /** Year of publication, or of the edition read. */
  readonly year?: string;
  /** Edition, volume, section, page, table. */
  readonly where?: string;
  readonly address?: string;
  /** What was read where not the whole, whom it disagrees with, whom we follow. */
  readonly note?: string;
}

/** Kinds that count as publications which are neither wiki pages nor programs. */
export const PUBLICATIONS: ReadonlySet<SourceKind> = new Set([
  'textbook',
  'paper',
  'standard',
  'encyclopaedia',
  'article',
]);
