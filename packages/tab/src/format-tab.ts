import type { Sounding } from '@reedplate/layout';
import { type OptionNames, requireOneOf, requireOptions, requireShape } from '@reedplate/pitch';
import { TAB_DIALECT_IDS, TAB_DIALECTS, type TabDialect, type TabDialectId } from './dialects.js';
import { markOf, requireMark, type TabEvent, type TabMark } from './tab-mark.js';

/** How tablature is written. */
export interface TabOptions {
  /** Default `plus-minus`: `+4` blow, `-4` draw. */
  readonly dialect?: TabDialectId;
}

/** The names of the options of tablature that is written. */
export const TAB_OPTIONS: OptionNames<TabOptions> = { dialect: true };

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
  options: TabOptions = {},
): string {
  const { dialect = 'plus-minus' } = requireOptions(options, TAB_OPTIONS, 'formatSounding');
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
export function formatTab(events: readonly TabEvent[], options: TabOptions = {}): string {
  const { dialect = 'plus-minus' } = requireOptions(options, TAB_OPTIONS, 'formatTab');
  requireShape({ events }, { events: 'list' }, EVENTS);
  const rules = dialectOf(dialect);
  return events.map((event, at) => writeEvent(requireEvent(event, at), rules)).join(' ');
}

const EVENTS = { what: 'a list of what sounds, as parseTab gives it', code: 'TAB_SYNTAX' } as const;

function requireEvent(event: TabEvent, at: number): TabEvent {
  requireShape({ event }, { event: 'list' }, { ...EVENTS, path: `[${at}]` });
  for (const mark of event) requireMark(mark);
  return event;
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
