import type { TabDialectId } from './dialects.js';

/** One to four holes whose digits stand together. */
const HOLES = String.raw`(?<holes>\d{1,8})`;
/** Semitones of bend: apostrophes and primes, slashes, flats, or quotation marks for two. */
const BEND = String.raw`(?<bend>\/{1,5}|b{1,5}|♭{1,5}|['’′″‴"”]*)`;
const OVER = '(?<over>[o°º]?)';

const pattern = (...parts: readonly string[]): RegExp => new RegExp(parts.join(''), 'uy');

/** A letter before or after the hole says overblow or overdraw: `OB6`, `6OB`, `7OD`. */
const PROSE_OVERBEND = [
  pattern('O(?<breath>[BD])', HOLES, '(?<bend>)(?<over>)'),
  pattern(HOLES, 'O(?<breath>[BD])', '(?<bend>)(?<over>)'),
];

/** What one mark looks like in a dialect; where several fit, the first. */
interface DialectPatterns {
  readonly marks: readonly RegExp[];
  /** Patterns of overbends that have no sign of their own. */
  readonly overbends: readonly RegExp[];
}

const patterns = (...marks: readonly RegExp[]): DialectPatterns => ({
  marks,
  overbends: PROSE_OVERBEND,
});

/** What marks look like in each dialect. Minus signs and primes may be the printed ones. */
export const MARK_PATTERNS: Readonly<Record<TabDialectId, DialectPatterns>> = {
  'plus-minus': patterns(pattern(String.raw`(?<breath>[+\-−–]?)`, HOLES, BEND, OVER)),
  arrows: patterns(
    pattern(HOLES, '(?<breath>[↑↓])', BEND, OVER),
    pattern('(?<breath>[↑↓])', HOLES, BEND, OVER),
  ),
  'blow-draw': patterns(pattern(HOLES, '(?<breath>[BD])', BEND, OVER)),
  'exhale-inhale': patterns(pattern(HOLES, '(?<breath>[ei])', BEND, OVER)),
  // The sign of a bend stands before the plus or after it.
  'plus-only': patterns(
    pattern(HOLES, String.raw`(?<breath>\+)`, BEND, OVER),
    pattern(HOLES, BEND, OVER, String.raw`(?<breath>\+?)`),
  ),
  underlined: patterns(pattern(String.raw`(?<holes>(?:\d\u0332?){1,8})`, BEND, OVER)),
};

/** Signs that say draw. */
export const DRAW_SIGNS: ReadonlySet<string> = new Set(['-', '−', '–', '↓', 'D', 'i', '\u0332']);

/** Semitones that one sign of bend stands for. */
export const BEND_SIGNS: ReadonlyMap<string, number> = new Map([
  ["'", 1],
  ['’', 1],
  ['′', 1],
  ['/', 1],
  ['b', 1],
  ['♭', 1],
  ['"', 2],
  ['”', 2],
  ['″', 2],
  ['‴', 3],
]);
