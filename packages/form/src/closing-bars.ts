import { type Mode, nearestOf, ReedplateError } from '@reedplate/pitch';
import { readPlainBars } from './plain-bars.js';
import type { Form, FormBar } from './types.js';
import { withBars } from './vary.js';

/** The last two bars of a chorus: a turnaround, which leads on, or an ending, which closes. */
export interface ClosingBars {
  /** Lower-case words with hyphens, unique in its catalogue. */
  readonly id: string;
  readonly name: string;
  readonly mode: Mode;
  /** Two bars. */
  readonly bars: readonly FormBar[];
  /** A named publication, or `common practice`, or `from memory`. */
  readonly source: string;
}

/** A row of a catalogue of closing bars. */
export interface ClosingRow extends Omit<ClosingBars, 'bars' | 'mode'> {
  /** Default `major`. */
  readonly mode?: Mode;
  /** As {@link readPlainBars} reads them. */
  readonly bars: string;
}

/** Reads the rows of a catalogue of closing bars. */
export function readClosingRows(rows: readonly ClosingRow[]): readonly ClosingBars[] {
  return Object.freeze(
    rows.map(({ id, name, mode = 'major', bars, source }) =>
      Object.freeze({ id, name, mode, bars: readPlainBars(bars), source }),
    ),
  );
}

/** The form with the bars of this id, of the form's own mode, for its last two. */
export function closeForm(form: Form, id: string, catalogue: readonly ClosingBars[]): Form {
  const choices = catalogue.filter(({ mode }) => mode === form.mode);
  const closing = choices.find((choice) => choice.id === id);
  if (closing === undefined) throw unknownClosing(form, id, choices);
  const { length } = closing.bars;
  if (form.bars.length > length) {
    return withBars(form, [...form.bars.slice(0, -length), ...closing.bars]);
  }
  const expected = `a form of more than ${length} bars`;
  throw new ReedplateError({ code: 'FORM_INVALID', value: form.id, expected });
}

function unknownClosing(
  { mode }: Form,
  value: unknown,
  choices: readonly ClosingBars[],
): ReedplateError {
  const ids = choices.map(({ id }) => id);
  return new ReedplateError({
    code: 'OPTION_UNKNOWN',
    value,
    expected: `for a ${mode} form one of ${ids.join(', ')}`,
    nearest: typeof value === 'string' ? nearestClosing(value, ids) : undefined,
  });
}

/** The same bars in the other mode, where there are any, are nearer than any spelling. */
function nearestClosing(value: string, ids: readonly string[]): string | undefined {
  const plain = value.replace(/^minor-/u, '');
  return ids.find((id) => id === plain || id === `minor-${plain}`) ?? nearestOf(value, ids);
}
