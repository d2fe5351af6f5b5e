import { ChordType, ScaleType } from 'tonal';

/** A row of a dictionary: degrees, then the names that stand for them, the canonical one first. */
export type DictionaryRow = readonly [degrees: string, names: string];

/** Suffixes that musicians write more often than the one tonal lists first. Common practice. */
const CANONICAL: readonly string[] = ['', 'mMaj7', '69', 'add9', '7b9sus4'];

/** Suffixes that tonal does not list, by the one it does. */
const ADDED_SUFFIXES: ReadonlyMap<string, string> = new Map([['h', 'ø7']]);

/**
 * Suffixes that read as something else after a root: `4` (C4 is a note) and `b9sus` (Cb9sus has
 * the root C♭). The chord of fourths keeps its name, `quartal`.
 */
const LEFT_OUT: ReadonlySet<string> = new Set(['4', 'b9sus']);

/** Names of scales that tonal does not list, by the one it does. */
const ADDED_SCALE_NAMES: ReadonlyMap<string, string> = new Map([['aeolian', 'natural minor']]);

/** Every kind of chord in tonal's dictionary, amended as above: suffixes apart by a space. */
export function chordRows(): readonly DictionaryRow[] {
  return ChordType.all().map(({ aliases, intervals }): DictionaryRow => {
    const known = aliases.filter((alias) => !LEFT_OUT.has(alias));
    const suffixes = withAdded(known, ADDED_SUFFIXES);
    const first = suffixes.filter((suffix) => CANONICAL.includes(suffix));
    const others = suffixes.filter((suffix) => !CANONICAL.includes(suffix));
    return [degreesOf(intervals), [...first, ...others].join(' ')];
  });
}

/** Every scale in tonal's dictionary, amended as above: names apart by a comma. */
export function scaleRows(): readonly DictionaryRow[] {
  return ScaleType.all().map(({ name, aliases, intervals }): DictionaryRow => {
    const names = withAdded([name, ...aliases], ADDED_SCALE_NAMES);
    return [degreesOf(intervals), names.join(', ')];
  });
}

function withAdded(names: readonly string[], added: ReadonlyMap<string, string>) {
  return names.flatMap((name) => [name, added.get(name) ?? []].flat());
}

/** Signs before a degree by the letter of tonal's interval; a diminished seventh is twice flat. */
const SIGNS: ReadonlyMap<string, string> = new Map([
  ['P', ''],
  ['M', ''],
  ['m', 'b'],
  ['A', '#'],
  ['d', 'b'],
]);

function degreesOf(intervals: readonly string[]): string {
  return intervals.map(degreeOf).join(' ');
}

function degreeOf(interval: string): string {
  const sign = interval === '7d' ? 'bb' : SIGNS.get(interval.slice(-1));
  if (sign === undefined) throw new Error(`tonal's interval ${interval} has no degree here`);
  return `${sign}${Number.parseInt(interval, 10)}`;
}
