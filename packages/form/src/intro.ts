import { requireOneOf } from '@reedplate/pitch';
import { barsPerUnit, noPlace } from './bar-shape.js';
import { type FormByNameOptions, type FormLike, formByName } from './to-form.js';
import type { Form, FormBar } from './types.js';

/** Where a band can come in; see {@link introBars}. */
export const INTRO_KINDS = Object.freeze(['from-the-five', 'from-the-turnaround'] as const);

/** Where a band comes in: from the V of the last line, or from the turnaround. */
export type IntroKind = (typeof INTRO_KINDS)[number];

const LINE = 4;
/** A V here belongs to the turnaround and is no place to come in. */
const TURNAROUND = 2;
/** Chords that open a last line: V, or ii or ♭VI in its place. Capitals and small letters. */
const OPENS_CADENCE = /^(?:V|v|ii|II|bVI)(?![IViv])/u;

/**
 * The bars a band plays before the first chorus: the end of the form, `from-the-five` from the V that opens
 * the last line (or the ii or ♭VI in its place: bars 9 to 12 of twelve), `from-the-turnaround` the last two
 * bars (the last four of twenty-four). The option `intro` of {@link makeChart} puts them first.
 *
 * @throws ReedplateError `FORM_INVALID` for a form without such a V, or of two bars or one;
 * `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { introBars } from '@reedplate/form';
 *
 * introBars('basic', 'from-the-five').map(([chord]) => chord?.numeral); // => ['V7', 'IV7', 'I7', 'V7']
 * introBars('basic', 'from-the-turnaround').length; // => 2
 * introBars('vamp', 'from-the-five'); // throws FORM_INVALID
 * ```
 */
export function introBars(
  given: FormLike,
  kind: IntroKind,
  options: FormByNameOptions = {},
): readonly FormBar[] {
  const form = formByName(given, options, 'introBars');
  requireOneOf(kind, INTRO_KINDS, { what: 'an introduction' });
  if (kind === 'from-the-five') return Object.freeze(form.bars.slice(cadenceStart(form)));
  const count = TURNAROUND * barsPerUnit(form);
  if (form.bars.length > count) return Object.freeze(form.bars.slice(-count));
  throw noPlace(form, `a form of more than ${count} bars`);
}

/** Looks for the V line by line from the end, four bars to a line, and in each line forwards. */
function cadenceStart(form: Form): number {
  const { length } = form.bars;
  // Ten, eleven and thirteen bars have their last line where twelve bars have it.
  const lastLine = Math.max(0, Math.round(length / LINE) * LINE - LINE);
  for (let line = lastLine; line >= 0; line -= LINE) {
    const end = Math.min(line === lastLine ? length : line + LINE, length - TURNAROUND + 1);
    for (let index = line; index < end; index += 1) {
      if (opensCadence(form.bars[index])) return index;
    }
  }
  throw noPlace(form, 'a form with a bar that begins on V before its last bar');
}

function opensCadence(bar: FormBar | undefined): boolean {
  return OPENS_CADENCE.test(bar?.[0]?.numeral ?? '');
}
