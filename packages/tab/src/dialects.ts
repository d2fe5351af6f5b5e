import type { Breath } from '@reedplate/layout';

/** How one family of tablature writes what it writes. */
export interface TabDialect {
  readonly id: string;
  readonly description: string;
  /** What stands before the hole number, by breath. */
  readonly before: Readonly<Record<Breath, string>>;
  /** What stands after the hole number, by breath. */
  readonly after: Readonly<Record<Breath, string>>;
  /** Repeated once a semitone of bend. */
  readonly bend: string;
  readonly overbend: string;
}

/**
 * The families of printed tablature that are written so far. Signs, arrows and letters are common
 * practice in method books, no single source; no sign for an overbend is universal.
 */
export const TAB_DIALECTS = Object.freeze({
  sign: {
    id: 'sign',
    description: "+4 blow, -4 draw, an apostrophe a semitone of bend, o for an overbend: -3'' +6o",
    before: { blow: '+', draw: '-' },
    after: { blow: '', draw: '' },
    bend: "'",
    overbend: 'o',
  },
  arrow: {
    id: 'arrow',
    description: "4↑ blow, 4↓ draw, an apostrophe a semitone of bend, ° for an overbend: 3↓'' 6↑°",
    before: { blow: '', draw: '' },
    after: { blow: '↑', draw: '↓' },
    bend: "'",
    overbend: '°',
  },
  letter: {
    id: 'letter',
    description: "4B blow, 4D draw, an apostrophe a semitone of bend, o for an overbend: 3D'' 6Bo",
    before: { blow: '', draw: '' },
    after: { blow: 'B', draw: 'D' },
    bend: "'",
    overbend: 'o',
  },
} as const satisfies Readonly<Record<string, TabDialect>>);

/** Name of a family of tablature. */
export type TabDialectId = keyof typeof TAB_DIALECTS;

/** The names of all dialects, the default first. */
export const TAB_DIALECT_IDS: readonly TabDialectId[] = Object.freeze(['sign', 'arrow', 'letter']);
