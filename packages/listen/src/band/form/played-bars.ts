import type { BarDifference, Form, FormBar } from '@reedplate/form';
import { chordOfNumeral, itemAt, type Key } from '@reedplate/pitch';
import type { BarScores, FreeChord } from './bar-scores.js';
import { followForm, LEAVING } from './follow-form.js';
import type { FormTable } from './form-table.js';

/** A bar as a band plays it. */
export interface PlayedBar {
  /** Place among the bars of the grid. */
  readonly at: number;
  readonly chords: FormBar;
  /** From 1. */
  readonly chorus: number;
  /** From 1. */
  readonly barOfForm: number;
  /** How well its chords fit, and how much better than the best of other chords. */
  readonly fit: number;
  readonly lead: number;
}

/** Bars in a row, and where they leave the form. */
export interface Played {
  readonly bars: readonly PlayedBar[];
  readonly differences: readonly BarDifference[];
}

/** The bars that follow a form, with other chords where these fit far better. */
export function barsOfForm(
  scores: BarScores,
  table: FormTable,
  { form: place, key }: { readonly form: number; readonly key: Key },
): Played {
  const form = table.forms[place] as Form;
  const places = table.barsOfForms[place] as readonly number[];
  const { path } = followForm(scores, { bars: places, tonic: key.pitchClass });
  const bars: PlayedBar[] = [];
  const differences: BarDifference[] = [];
  let chorus = 1;
  let before: number | undefined;
  for (const [at, here] of path.entries()) {
    if (here === null) continue;
    const sung = chordsOf(
      { scores, table, key },
      at,
      places[here] as number,
      form.bars[here] as FormBar,
    );
    if (before !== undefined && here < before) chorus += 1;
    bars.push({
      at,
      chorus,
      barOfForm: here + 1,
      chords: sung.chords,
      fit: sung.fit,
      lead: sung.lead,
    });
    differences.push(...differencesOf({ form, key, before, here, bar: bars.length }, sung));
    before = here;
  }
  return { bars, differences };
}

/** What stays the same from bar to bar. */
interface Ground {
  readonly scores: BarScores;
  readonly table: FormTable;
  readonly key: Key;
}

interface Chosen extends Pick<PlayedBar, 'chords' | 'fit' | 'lead'> {
  /** Whether the chords are others than those of the form. */
  readonly isOther: boolean;
}

/** The chords of a bar: those of the form, unless others fit far better. */
function chordsOf(
  { scores, table, key }: Ground,
  at: number,
  place: number,
  written: FormBar,
): Chosen {
  const own = scores.ofForms[(place * 12 + key.pitchClass) * scores.bars + at] as number;
  const any = scores.free[at] as number;
  if (any - LEAVING.otherChord > own) {
    const chords = numeralsOf(scores.freeChords[at] as readonly FreeChord[], table, key);
    return { chords, isOther: true, fit: any, lead: any - own };
  }
  return {
    chords: written,
    isOther: false,
    fit: own,
    lead: own - otherThan(scores, key, at, written),
  };
}

interface Step {
  readonly form: Form;
  readonly key: Key;
  /** Bar of the form before, and this one, from 0. */
  readonly before: number | undefined;
  readonly here: number;
  /** Bar of the chart, from 1. */
  readonly bar: number;
}

/** Where a bar leaves the form, and what was left out before it. */
function differencesOf(
  { form, key, before, here, bar }: Step,
  { chords, isOther }: Chosen,
): readonly BarDifference[] {
  if (before === here && form.bars.length > 1) return [gap('extra', bar, null, form, key, chords)];
  const left = before === undefined ? [] : leftOut(before, here, form.bars.length);
  const written = form.bars[here] as FormBar;
  return [
    ...left.map((missing) => gap('missing', null, missing, form, key)),
    ...(isOther ? [otherChords(bar, here, { chords, written, key })] : []),
  ];
}

/** The bars between two that followed each other: one that was left out, or none. */
function leftOut(before: number, here: number, length: number): readonly number[] {
  const next = (before + 1) % length;
  return here === (before + 2) % length && length > 2 ? [next] : [];
}

/** How well the best bar fits that has other roots than those written. */
function otherThan(scores: BarScores, { pitchClass }: Key, at: number, written: FormBar): number {
  const free = scores.freeChords[at] as readonly FreeChord[];
  const roots = written.map(({ numeral }) => rootOf(numeral ?? 'I', pitchClass));
  const isSame = free.length === 1 && roots.length === 1 && free[0]?.root === roots[0];
  return isSame ? (scores.next[at] as number) : (scores.free[at] as number);
}

const rootOf = (numeral: string, tonic: number): number =>
  (itemAt(chordOfNumeral(numeral, 'C').tones, 0).pitchClass + tonic) % 12;

/** Numerals of the roots, from the tonic up. */
const STEPS = [
  'I',
  'bII',
  'II',
  'bIII',
  'III',
  'IV',
  '#IV',
  'V',
  'bVI',
  'VI',
  'bVII',
  'VII',
] as const;

/** Chords that were heard, as a bar in numerals. */
export function numeralsOf(
  chords: readonly FreeChord[],
  { freeKinds }: FormTable,
  { pitchClass }: Pick<Key, 'pitchClass'>,
): FormBar {
  return chords.map(({ kind, root }) => {
    const step = STEPS[(root - pitchClass + 12) % 12] as string;
    const onI = (freeKinds.find((free) => free.kind === kind) as { readonly numeral: string })
      .numeral;
    const suffix = onI.slice(1);
    return { numeral: `${onI.startsWith('i') ? step.toLowerCase() : step}${suffix}`, weight: 1 };
  });
}

function otherChords(
  bar: number,
  here: number,
  {
    chords,
    written,
    key,
  }: { readonly chords: FormBar; readonly written: FormBar; readonly key: Key },
): BarDifference {
  const sameRoots =
    chords.length === written.length &&
    chords.every(
      ({ numeral }, at) => rootOf(numeral ?? 'I', 0) === rootOf(written[at]?.numeral ?? 'I', 0),
    );
  return {
    kind: sameRoots ? 'quality' : 'root',
    bar,
    barOfForm: here + 1,
    given: textOf(chords, key),
    expected: textOf(written, key),
    cost: sameRoots ? 0.5 : 1,
  };
}

function gap(
  kind: 'missing' | 'extra',
  bar: number | null,
  missing: number | null,
  form: Form,
  key: Key,
  chords?: FormBar,
): BarDifference {
  return {
    kind,
    bar,
    barOfForm: missing === null ? null : missing + 1,
    given: chords === undefined ? null : textOf(chords, key),
    expected: missing === null ? null : textOf(form.bars[missing] as FormBar, key),
    cost: 1,
  };
}

/** A bar in lead-sheet marks. */
export function textOf(bar: FormBar, key: Key): string {
  return bar
    .flatMap(({ numeral, weight }) => [
      numeral === null ? 'N.C.' : chordOfNumeral(numeral, key).symbol,
      ...Array.from({ length: weight - 1 }, () => '/'),
    ])
    .join(' ');
}

/** The bars as they were heard, of no form: from the first that sounds to the last. */
export function barsOfNoForm(
  scores: BarScores,
  table: FormTable,
  key: Pick<Key, 'pitchClass'>,
): Played {
  const least = LEAST_FIT * Math.max(...scores.free);
  const sounding = [...scores.free.keys()].filter((at) => (scores.free[at] as number) >= least);
  const [from, to] = [itemAt(sounding, 0), itemAt(sounding, -1)];
  const bars = Array.from({ length: to - from + 1 }, (_, index): PlayedBar => {
    const at = from + index;
    const chords = numeralsOf(scores.freeChords[at] as readonly FreeChord[], table, key);
    const fit = scores.free[at] as number;
    const lead = fit - (scores.next[at] as number);
    return { at, chords, chorus: 1, barOfForm: index + 1, fit, lead };
  });
  return { bars, differences: [] };
}

/** Of the best fitting bar: what fits less, at either end, is silence or clicks. */
const LEAST_FIT = 0.35;
