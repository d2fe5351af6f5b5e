import { parseMetre } from '@reedplate/line';
import {
  type OptionNames,
  requireInteger,
  requireOneOf,
  requireOptions,
  requireShape,
} from '@reedplate/pitch';
import { type FormLike, type KnownForms, toForm } from './to-form.js';
import type { Form, FormBar } from './types.js';
import { withBars } from './vary.js';

const BREAK_HITS = ['none', 'first-beat'] as const;

/** What a band plays in a bar of break: nothing, or its chord on the first beat only. */
export type BreakHit = (typeof BREAK_HITS)[number];

/** How {@link withBreak} silences a bar. */
export interface BreakOptions {
  /** Default `none`; `first-beat` is stop time. */
  readonly hit?: BreakHit;
  /** Forms of one's own that are known by their id. */
  readonly known?: KnownForms;
}

const BREAK_OPTIONS: OptionNames<BreakOptions> = { hit: true, known: true };

/**
 * The form with a break: no chord in the bars given, so that a singer or player is alone. With a
 * hit the first chord of each bar still sounds for one felt beat of the form's metre.
 *
 * @param bars bars of the form, from 1
 * @throws ReedplateError `NUMBER_RANGE` for a bar that the form has not; `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { formatForm, parseForm, withBreak } from '@reedplate/form';
 *
 * formatForm(withBreak(parseForm('I7 | IV7 | I7'), [2])); // => '| I7 | N.C. | I7 |'
 * formatForm(withBreak(parseForm('I7 | V7'), [1], { hit: 'first-beat' })); // => '| I7 N.C. / / | V7 |'
 * withBreak('basic', [13]); // throws NUMBER_RANGE
 * ```
 */
export function withBreak(
  given: FormLike,
  bars: readonly number[],
  options: BreakOptions = {},
): Form {
  const { hit = 'none', known } = requireOptions(options, BREAK_OPTIONS, 'withBreak');
  const form = toForm(given, known);
  requireOneOf(hit, BREAK_HITS, { what: 'a hit' });
  requireShape({ bars }, { bars: 'list' }, { what: 'a list of bars', code: 'NUMBER_RANGE' });
  for (const bar of bars) {
    requireInteger(bar, { min: 1, max: form.bars.length, what: 'a bar of the form' });
  }
  const beats = hit === 'none' ? 0 : parseMetre(form.metre).beatsPerBar;
  const silent = new Set(bars);
  const broken = form.bars.map((bar, index) =>
    silent.has(index + 1) ? breakBar(bar, beats) : bar,
  );
  return withBars(form, broken);
}

function breakBar([first]: FormBar, beats: number): FormBar {
  const numeral = first?.numeral ?? null;
  if (numeral === null || beats === 0) return [{ numeral: null, weight: 1 }];
  const hit = { numeral, weight: 1 };
  return beats === 1 ? [hit] : [hit, { numeral: null, weight: beats - 1 }];
}
