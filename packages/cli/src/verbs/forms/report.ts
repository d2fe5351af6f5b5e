import {
  type ClosingBars,
  ENDINGS,
  type Feel,
  FORMS,
  type Form,
  formatForm,
  formById,
  TURNAROUNDS,
} from '@reedplate/form';
import type { Mode } from '@reedplate/pitch';

/** A form of the catalogue, told briefly. */
export interface FormEntry {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly use: string;
  readonly source: string;
  readonly mode: Mode;
  readonly metre: string;
  readonly feel: Feel;
  /**
   * How many bars it has.
   * @minimum 1
   * @asType integer
   */
  readonly length: number;
  /** Its bars in lead-sheet marks, four to a line. */
  readonly bars: string;
}

/** A turnaround or an ending. */
export interface ClosingEntry {
  readonly id: string;
  readonly name: string;
  readonly source: string;
  readonly mode: Mode;
  /** Its two bars in lead-sheet marks. */
  readonly bars: string;
}

/** What `reedplate forms --json` prints. */
export interface FormsReport {
  readonly forms: readonly FormEntry[];
  /** Empty, as `endings` are, where one form or those of a length were asked for. */
  readonly turnarounds: readonly ClosingEntry[];
  readonly endings: readonly ClosingEntry[];
}

/** Which forms {@link formsReport} tells of. */
export interface FormsOptions {
  /** Only the form of this id; default all. */
  readonly id?: string;
  /** Number of bars; default any. */
  readonly length?: number;
  /** Default either. */
  readonly mode?: Mode;
}

/**
 * The catalogue: forms with the turnarounds and endings that go with them, or the forms of a length
 * alone.
 *
 * @throws ReedplateError `FORM_UNKNOWN` for an id that is not there
 */
export function formsReport({ id, length, mode }: FormsOptions = {}): FormsReport {
  const isOfMode = (entry: { readonly mode: Mode }): boolean =>
    mode === undefined || entry.mode === mode;
  const isWhole = id === undefined && length === undefined;
  return {
    forms: (id === undefined ? FORMS : [formById(id)])
      .filter(isOfMode)
      .filter(({ bars }) => length === undefined || bars.length === length)
      .map(formEntry),
    turnarounds: isWhole ? TURNAROUNDS.filter(isOfMode).map(closingEntry) : [],
    endings: isWhole ? ENDINGS.filter(isOfMode).map(closingEntry) : [],
  };
}

function formEntry(form: Form): FormEntry {
  const { bars, ...told } = form;
  return { ...told, length: bars.length, bars: formatForm(form) };
}

function closingEntry({ bars, ...told }: ClosingBars): ClosingEntry {
  return { ...told, bars: formatForm({ ...(FORMS[0] as Form), bars }) };
}
