import { parseMetre } from '@reedplate/line';
import {
  nearestOf,
  type OptionNames,
  ReedplateError,
  requireInteger,
  requireOneOf,
  requireOptions,
  requireShape,
  type Shape,
} from '@reedplate/pitch';
import { FORMS, FORMS_BY_ID, type FormId } from './catalogue.js';
import { FEELS, type Form, type FormBar } from './types.js';

/** A form, or its id: one of the catalogue, or one of those given by `known`. */
export type FormLike = Form | FormId | (string & Record<never, never>);

/** Forms of one's own that are known by their id, before those of the catalogue. */
export interface KnownForms {
  readonly forms?: readonly Form[];
}

/**
 * The form itself, given as a form or by its id: how every function here takes a form.
 *
 * @internal
 * @throws ReedplateError `FORM_UNKNOWN`, or `FORM_INVALID` for what is no form
 * @example
 * ```ts
 * import { makeForm, toForm } from '@reedplate/form';
 *
 * toForm('basic').bars.length; // => 12
 * const mine = makeForm([[{ numeral: 'I7', weight: 1 }]], { id: 'mine' });
 * toForm('mine', { forms: [mine] }).bars.length; // => 1
 * toForm('mine'); // throws FORM_UNKNOWN
 * ```
 */
export function toForm(form: FormLike, known: KnownForms = {}): Form {
  const { forms = [] } = requireOptions(known, KNOWN, 'known');
  requireShape({ forms }, { forms: 'list' }, { ...WORDS, what: "a list of one's own forms" });
  if (isForm(form)) return requireForm(form);
  if (typeof form !== 'string') throw noForm(form);
  for (const own of forms) requireShape(own, { id: 'text' }, WORDS);
  const found = forms.find(({ id }) => id === form) ?? FORMS_BY_ID.get(form);
  if (found !== undefined) return found;
  throw new ReedplateError({
    code: 'FORM_UNKNOWN',
    value: form,
    expected: form.includes('|')
      ? 'the id of a form; parseForm reads bars'
      : `one of the ${FORMS.length} ids of the catalogue, such as basic or quick-change`,
    nearest:
      CALLED.get(form.toLowerCase()) ??
      nearestOf(form, [...forms.map(({ id }) => id), ...FORMS_BY_ID.keys()]),
  });
}

/** What players say for a form of the catalogue; common practice, no source. */
const CALLED: ReadonlyMap<string, FormId> = new Map([
  ['blues', 'basic'],
  ['12-bar', 'basic'],
  ['12-bar-blues', 'basic'],
  ['twelve-bar', 'basic'],
  ['twelve-bar-blues', 'basic'],
  ['8-bar', 'eight-bar'],
  ['8-bar-blues', 'eight-bar'],
  ['16-bar', 'sixteen-bar'],
  ['16-bar-blues', 'sixteen-bar'],
  ['24-bar', 'twenty-four-bar'],
]);

/** Where a form is looked up by its id. */
export interface FormByNameOptions {
  /** Forms of one's own that are known by their id. */
  readonly known?: KnownForms;
}

const BY_NAME: OptionNames<FormByNameOptions> = { known: true };

/**
 * The form itself, as {@link toForm} gives it, for a function with no other option.
 *
 * @internal
 */
export function formByName(form: FormLike, options: FormByNameOptions, what: string): Form {
  return toForm(form, requireOptions(options, BY_NAME, what).known);
}

function isForm(value: unknown): value is Form {
  return (
    typeof value === 'object' &&
    value !== null &&
    'mode' in value &&
    'bars' in value &&
    Array.isArray(value.bars)
  );
}

const KNOWN: OptionNames<KnownForms> = { forms: true };
const FORM: Shape<Form> = { id: 'text', name: 'text', description: 'text', use: 'text' };
const WORDS = { what: 'a form, as makeForm gives it', code: 'FORM_INVALID' } as const;
const MOST_WEIGHT = 64;

/** What has the fields of a form, if it is one: a form may come from JSON, so each bar is looked at. */
function requireForm(form: Form): Form {
  const { mode, metre, feel, bars } = requireShape(form, { ...FORM, source: 'text' }, WORDS);
  const { code } = WORDS;
  requireOneOf(mode, ['major', 'minor'], { what: 'a mode', code, where: { path: 'mode' } });
  requireOneOf(feel, FEELS, { what: 'a feel', code, where: { path: 'feel' } });
  parseMetre(metre);
  requireInteger(bars.length, { min: 1, what: 'bars', code, where: { path: 'bars' } });
  for (const [index, bar] of bars.entries()) checkBar(bar, `bars[${index}]`);
  return form;
}

function checkBar(bar: FormBar, path: string): void {
  const words = { what: 'chords of a bar, at least one', code: WORDS.code, path };
  requireShape({ bar }, { bar: 'list' }, words);
  if (bar.length === 0) throw noForm(bar, path);
  for (const chord of bar) {
    const { numeral, weight } = requireShape(chord, {}, words);
    requireShape({ numeral: numeral ?? '' }, { numeral: 'text' }, words);
    const bounds = { min: 1, max: MOST_WEIGHT, what: 'a weight', code: WORDS.code };
    requireInteger(weight, { ...bounds, where: { path } });
  }
}

function noForm(value: unknown, path?: string): ReedplateError {
  return new ReedplateError({
    code: 'FORM_INVALID',
    value,
    expected: 'a form, or the id of one such as basic or quick-change',
    ...(path === undefined ? {} : { where: { path } }),
  });
}
