import type { Breath } from '@reedplate/layout';
import { deepFreeze } from '@reedplate/pitch';

/** How one family of tablature writes what it writes. */
export interface TabDialect {
  readonly id: string;
  readonly description: string;
  /** What stands before the hole number, by breath. */
  readonly before: Readonly<Record<Breath, string>>;
  /** What stands after the hole number, by breath. */
  readonly after: Readonly<Record<Breath, string>>;
  /** Put after each digit of the hole number, by breath. */
  readonly underDigits: Readonly<Record<Breath, string>>;
  /** Repeated once a semitone of bend. */
  readonly bend: string;
  readonly overbend: string;
}

const NOTHING = { blow: '', draw: '' } as const;

/**
 * The families of printed tablature that are read and written. All are common practice in method
 * books, no single source; no sign for an overbend is universal.
 */
export const TAB_DIALECTS = /* @__PURE__ */ deepFreeze({
  'plus-minus': {
    id: 'plus-minus',
    description: "+4 blow, -4 draw, an apostrophe a semitone of bend, o for an overbend: -3'' +6o",
    before: { blow: '+', draw: '-' },
    after: NOTHING,
    underDigits: NOTHING,
    bend: "'",
    overbend: 'o',
  },
  arrows: {
    id: 'arrows',
    description: "4↑ blow, 4↓ draw, an apostrophe a semitone of bend, ° for an overbend: 3↓'' 6↑°",
    before: NOTHING,
    after: { blow: '↑', draw: '↓' },
    underDigits: NOTHING,
    bend: "'",
    overbend: '°',
  },
  'blow-draw': {
    id: 'blow-draw',
    description: "4B blow, 4D draw, an apostrophe a semitone of bend, o for an overbend: 3D'' 6Bo",
    before: NOTHING,
    after: { blow: 'B', draw: 'D' },
    underDigits: NOTHING,
    bend: "'",
    overbend: 'o',
  },
  'exhale-inhale': {
    id: 'exhale-inhale',
    description: "4e blow (exhale), 4i draw (inhale), an apostrophe a semitone of bend: 3i'' 6eo",
    before: NOTHING,
    after: { blow: 'e', draw: 'i' },
    underDigits: NOTHING,
    bend: "'",
    overbend: 'o',
  },
  'plus-only': {
    id: 'plus-only',
    description: "4+ blow, plain 4 draw, an apostrophe a semitone of bend: 3'' 6+o",
    before: NOTHING,
    after: { blow: '+', draw: '' },
    underDigits: NOTHING,
    bend: "'",
    overbend: 'o',
  },
  underlined: {
    id: 'underlined',
    description: "plain 4 blow, underlined 4̲ draw, an apostrophe a semitone of bend: 3̲'' 6o",
    before: NOTHING,
    after: NOTHING,
    underDigits: { blow: '', draw: '\u0332' },
    bend: "'",
    overbend: 'o',
  },
} as const satisfies Readonly<Record<string, TabDialect>>);

/** Name of a family of tablature. */
export type TabDialectId = keyof typeof TAB_DIALECTS;

/** The names of all dialects, the default first. */
export const TAB_DIALECT_IDS: readonly TabDialectId[] = Object.freeze([
  'plus-minus',
  'arrows',
  'blow-draw',
  'exhale-inhale',
  'plus-only',
  'underlined',
]);
