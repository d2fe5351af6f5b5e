import { FORMS, type Form, type FormBar, type FormChord } from '@reedplate/form';
import { chordOfNumeral, itemAt } from '@reedplate/pitch';
import { kindOf, templatesOf } from '../chords/chord-kinds.js';
import { CLASSES } from '../front/chroma.js';

/** A chord of a bar: when it sounds, in shares of the bar, and where its scores stand on the tonic C. */
export interface PartOfBar {
  /** Which stretch of the bar, of {@link FormTable.stretches}. */
  readonly stretch: number;
  readonly share: number;
  /** Place of its kind; null is no chord. */
  readonly kind: number | null;
  /** Semitones above the tonic. */
  readonly root: number;
}

/** Forms made ready for listening: what is the same in several is kept once. */
export interface FormTable {
  readonly forms: readonly Form[];
  /** For each form its bars, by their place in {@link FormTable.bars}. */
  readonly barsOfForms: readonly (readonly number[])[];
  readonly bars: readonly (readonly PartOfBar[])[];
  /** For each form its roots and thirds as a text: forms that differ in sevenths alone have the same. */
  readonly shapes: readonly string[];
  /** Stretches of a bar that some chord lasts for, from 0 to 1. The first is the whole bar. */
  readonly stretches: readonly (readonly [from: number, to: number])[];
  /** A row for each kind on each root, by `kind * 12 + root`. */
  readonly templates: Float64Array;
  /** Kinds that any bar may have, whatever the form: places, and the numeral of each on I. */
  readonly freeKinds: readonly { readonly kind: number; readonly numeral: string }[];
}

/** Kinds of chords that a band may put for those of a form. */
const FREE_NUMERALS = ['I7', 'i7', 'I', 'i', 'idim7'] as const;

/** Makes forms ready for listening. */
export function formTable(forms: readonly Form[]): FormTable {
  const kinds = new Map<string, { readonly place: number; readonly rows: Float64Array }>();
  const placeOfKind = (numeral: string): number => {
    const kind = kindOf(numeral);
    const text = JSON.stringify(kind);
    const known = kinds.get(text) ?? { place: kinds.size, rows: templatesOf(kind) };
    kinds.set(text, known);
    return known.place;
  };
  const freeKinds = FREE_NUMERALS.map((numeral) => ({ kind: placeOfKind(numeral), numeral }));
  const stretches = new Map<string, number>();
  const placeOfStretch = (from: number, to: number): number => {
    const text = `${from} ${to}`;
    const place = stretches.get(text) ?? stretches.size;
    stretches.set(text, place);
    return place;
  };
  for (const [from, to] of FREE_STRETCHES) placeOfStretch(from, to);
  const bars = new Map<string, { readonly place: number; readonly parts: readonly PartOfBar[] }>();
  const placeOfBar = (bar: FormBar): number => {
    const text = JSON.stringify(bar);
    const known = bars.get(text) ?? {
      place: bars.size,
      parts: partsOf(bar, placeOfStretch, placeOfKind),
    };
    bars.set(text, known);
    return known.place;
  };
  const barsOfForms = forms.map((form) => form.bars.map(placeOfBar));
  const templates = new Float64Array(kinds.size * 12 * CLASSES);
  for (const { place, rows } of kinds.values()) templates.set(rows, place * 12 * CLASSES);
  return {
    forms,
    barsOfForms,
    bars: [...bars.values()].map(({ parts }) => parts),
    shapes: forms.map(shapeOf),
    stretches: [...stretches.keys()].map((text) => text.split(' ').map(Number) as [number, number]),
    templates,
    freeKinds,
  };
}

/** A bar of any chord, or of two. */
export const FREE_STRETCHES = [
  [0, 1],
  [0, 0.5],
  [0.5, 1],
] as const;

function partsOf(
  bar: FormBar,
  placeOfStretch: (from: number, to: number) => number,
  placeOfKind: (numeral: string) => number,
): readonly PartOfBar[] {
  const shares = bar.reduce((sum, { weight }) => sum + weight, 0);
  let before = 0;
  return bar.map(({ numeral, weight }): PartOfBar => {
    const [from, to] = [before / shares, (before + weight) / shares];
    before += weight;
    return {
      stretch: placeOfStretch(from, to),
      share: to - from,
      kind: numeral === null ? null : placeOfKind(numeral),
      root: numeral === null ? 0 : rootOf(numeral),
    };
  });
}

/** Semitones above the tonic of the root that a numeral names. */
function rootOf(numeral: string): number {
  return itemAt(chordOfNumeral(numeral, 'C').tones, 0).pitchClass;
}

const shapeOf = ({ bars }: Form): string =>
  bars.map((bar) => bar.map(shapeOfChord).join('+')).join(' ');

function shapeOfChord({ numeral, weight }: FormChord): string {
  if (numeral === null) return `-*${weight}`;
  return `${rootOf(numeral)}${/^[#b]*[iv]/u.test(numeral) ? 'm' : ''}*${weight}`;
}

let catalogue: FormTable | undefined;

/** The catalogue of forms, made ready once: reading its numerals takes longer than hearing a bar. */
export function catalogueTable(): FormTable {
  catalogue ??= formTable(FORMS);
  return catalogue;
}
