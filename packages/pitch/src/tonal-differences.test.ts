import { readFileSync } from 'node:fs';
import { Chord, Key, Note, Progression, RomanNumeral, Scale } from 'tonal';
import { describe, expect, test } from 'vitest';
import {
  chordOfNumeral,
  isReedplateError,
  midi,
  noteNameWithOctave,
  parseChord,
  parseScale,
  toKey,
} from './index.js';

/** What is asked, what tonal answers, what we answer: one row of the table in the architecture page. */
type Difference = readonly [asked: string, tonal: () => unknown, ours: () => unknown];

const tonesOf = (names: readonly string[]): string => names.join(' ');

const DIFFERENCES: readonly Difference[] = [
  [
    '`i7` in C',
    () => Progression.fromRomanNumerals('C', ['i7'])[0],
    () => chordOfNumeral('i7', 'C').symbol,
  ],
  [
    '`#ivdim7` in C',
    () => RomanNumeral.get('#ivdim7').name,
    () => chordOfNumeral('#ivdim7', 'C').symbol,
  ],
  ['`V7/ii` in C', () => RomanNumeral.get('V7/ii').name, () => chordOfNumeral('V7/ii', 'C').symbol],
  ['`B♭3`', () => Note.midi('B♭3'), () => midi('B♭3')],
  ['`H4`', () => Note.midi('H4'), () => midi('H4')],
  ['pitch 61 in A', () => Note.fromMidi(61), () => noteNameWithOctave(61, { key: 'A' })],
  ['`CM`', () => Chord.get('CM').symbol, () => parseChord('CM').symbol],
  ['`Cmin(maj7)`', () => Chord.get('Cmin(maj7)').symbol, () => parseChord('Cmin(maj7)').symbol],
  ['`c7`', () => Chord.get('c7').symbol, () => parseChord('c7').symbol],
  ['`C4` as a chord', () => Chord.get('C4').symbol, () => parseChord('C4').symbol],
  [
    'tones of `Fbdim7`',
    () => tonesOf(Chord.get('Fbdim7').notes),
    () => tonesOf(parseChord('Fbdim7').tones.map(({ name }) => name)),
  ],
  [
    'scale `natural minor`',
    () => Scale.get('natural minor').name,
    () => parseScale('natural minor').name,
  ],
  ['key of `B#`', () => Key.majorKey('B#').tonic, () => toKey('B#' as 'B').name],
];

const PAGE = readFileSync(new URL('../../../docs/architecture.md', import.meta.url), 'utf8');

/** As the page shows an answer: code, or a word where there is none. */
function shown(answer: () => unknown): string {
  try {
    const given = answer();
    return given === null || given === '' ? 'nothing' : `\`${given}\``;
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    return error.nearest === undefined
      ? `\`${error.code}\``
      : `\`${error.code}\`, nearest \`${error.nearest}\``;
  }
}

describe('where we differ from tonal 6.4.3 on purpose', () => {
  test.each(DIFFERENCES)(
    'the architecture page says what both answer to %s',
    (asked, tonal, ours) => {
      expect(shown(tonal)).not.toBe(shown(ours));
      expect(PAGE).toContain(`| ${asked} | ${shown(tonal)} | ${shown(ours)} |`);
    },
  );

  test('the page has no row that is not held here', () => {
    const [, table = ''] = PAGE.split(
      '| Asked | tonal 6.4.3 | Reedplate | Why |\n|---|---|---|---|\n',
    );
    const held = (table.split('\n\n')[0] ?? '').split('\n');
    expect(held).toHaveLength(DIFFERENCES.length);
  });
});
