import type { Sounding } from '@reedplate/layout';
import { requireOneOf } from '@reedplate/pitch';
import { TAB_DIALECT_IDS, TAB_DIALECTS, type TabDialect, type TabDialectId } from './dialects.js';
import { markOf, type TabEvent, type TabMark } from './tab-mark.js';

/** How tablature is written. */
export interface TabOptions {
  /** Default `plus-minus`: `+4` blow, `-4` draw. */
  readonly dialect?: TabDialectId;
}

/**
 * Writes one sounding.
 *
 * @throws ReedplateError `OPTION_UNKNOWN` for an unknown dialect
 * @example
 * ```ts
 * import { formatSounding } from '@reedplate/tab';
 *
 * const bent = { hole: 3, breath: 'draw', technique: 'bend', depth: 2, pitch: 69 } as const;
 * formatSounding(bent); // => "-3''"
 * formatSounding(bent, { dialect: 'arrows' }); // => "3↓''"
 * ```
 */
export function formatSounding(
  sounding: Omit<Sounding, 'pitch'>,
  { dialect = 'plus-minus' }: TabOptions = {},
): string {
  return writeMark(markOf(sounding), dialectOf(dialect));
}

/**
 * Writes a line of tablature: events apart by spaces, marks that sound together in brackets.
 * The inverse of {@link parseTab}.
 *
 * @throws ReedplateError `OPTION_UNKNOWN` for an unknown dialect
 * @example
 * ```ts
 * import { formatTab, parseTab } from '@reedplate/tab';
 *
 * formatTab(parseTab("-2 -3' (-1-2-3)"), { dialect: 'blow-draw' }); // => "2D 3D' (1D2D3D)"
 * ```
 */
export function formatTab(
  events: readonly TabEvent[],
  { dialect = 'plus-minus' }: TabOptions = {},
): string {
  const rules = dialectOf(dialect);
  return events.map((event) => writeEvent(event, rules)).join(' ');
}

function writeEvent(event: TabEvent, rules: TabDialect): string {
  // Where a breath has no sign, only a space keeps one number from the next.
  const between = hasBareNumbers(rules) ? ' ' : '';
  const marks = event.map((mark) => writeMark(mark, rules)).join(between);
  return event.length === 1 ? marks : `(${marks})`;
}

function hasBareNumbers({ before, after }: TabDialect): boolean {
  return ['blow' as const, 'draw' as const].some(
    (breath) => before[breath] === '' && after[breath] === '',
  );
}

function writeMark({ hole, breath, bend, over }: TabMark, rules: TabDialect): string {
  const how = over ? rules.overbend : rules.bend.repeat(bend);
  const digits = [...`${hole}`].map((digit) => digit + rules.underDigits[breath]).join('');
  return `${rules.before[breath]}${digits}${rules.after[breath]}${how}`;
}

/** The rules of a dialect by name. */
export function dialectOf(id: TabDialectId): TabDialect {
  return TAB_DIALECTS[requireOneOf(id, TAB_DIALECT_IDS, { what: 'a dialect of tablature' })];
}
