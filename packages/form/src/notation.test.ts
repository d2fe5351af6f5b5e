import { chordOfNumeral, parseNumeral, type Tonic } from '@reedplate/pitch';
import fc from 'fast-check';
import { Note } from 'tonal';
import { describe, expect, test } from 'vitest';
import { formsOf, numerals, plainNumerals, tonics } from './arbitraries.js';
import { FORMS } from './catalogue.js';
import { formatForm } from './format-form.js';
import { parseForm } from './parse-form.js';
import type { Form } from './types.js';

const oneLine = (text: string, options = {}) =>
  formatForm(parseForm(text, options), { barsPerLine: 99 });

function errorOf(text: string, options = {}) {
  try {
    parseForm(text, options);
  } catch (error) {
    return error as {
      code: string;
      value: unknown;
      expected: string;
      nearest?: string;
      where: object;
    };
  }
  throw new Error(`${text} was read`);
}

describe('parseForm', () => {
  test.each([
    ['bar lines', '| I7 | IV7 | V7 |', '| I7 | IV7 | V7 |'],
    ['no outer bar lines', 'I7|IV7|V7', '| I7 | IV7 | V7 |'],
    ['a double bar line', 'I7 || IV7 ||', '| I7 | IV7 |'],
    [
      'the bar line written again on the next line',
      '| I7 | IV7 |\n| V7 | I7 |',
      '| I7 | IV7 | V7 | I7 |',
    ],
    ['lines without bar lines between', '| I7 |\r\n\r\n| V7 |\r| I7', '| I7 | V7 | I7 |'],
    ['% for the bar before', 'I7 | % | % | V7', '| I7 | % | % | V7 |'],
    ['chords that share a bar', 'I7 IV7 | I7 IV7 V7', '| I7 IV7 | I7 IV7 V7 |'],
    ['slashes as beats', 'I7 / / V7', '| I7 / / V7 |'],
    ['slashes that say no more than even shares', 'I7 / V7 / | I7 / / /', '| I7 V7 | I7 |'],
    ['N.C. however it is written', 'N.C. | NC | n.c. | I7', '| N.C. | % | % | I7 |'],
    ['N.C. for part of a bar', 'I7 N.C. / /', '| I7 N.C. / / |'],
    ['a repeat', '|: I7 | IV7 :|', '| I7 | IV7 | I7 | IV7 |'],
    ['a repeat from the beginning', 'I7 | IV7 :| V7', '| I7 | IV7 | I7 | IV7 | V7 |'],
    [
      'a second repeat that goes back to the end of the first',
      'I7 :| IV7 :|',
      '| I7 | % | IV7 | % |',
    ],
    ['a repeat begun at the end of a line', '| V7 |:\n| I7 :|', '| V7 | I7 | % |'],
    ['two repeats back to back', '|: I7 :|: IV7 :|', '| I7 | % | IV7 | % |'],
    ['two repeats with a double bar line between', '|: I7 :||: IV7 :||', '| I7 | % | IV7 | % |'],
    [
      'a repeat over the end of a line',
      '|: I7 |\n| IV7 :|\n|: V7 :|',
      '| I7 | IV7 | I7 | IV7 | V7 | % |',
    ],
    ['first and second endings', '|: I7 |1. IV7 :|2. V7 | I7 ||', '| I7 | IV7 | I7 | V7 | I7 |'],
    ['an ending for two passes', '|: I7 |1.2. IV7 :|3. V7 ||', '| I7 | IV7 | I7 | IV7 | I7 | V7 |'],
    [
      'an ending for two passes with a comma',
      '|: I7 |1,2. IV7 :|3. V7 ||',
      '| I7 | IV7 | I7 | IV7 | I7 | V7 |',
    ],
    ['three endings', '|: I7 |1. II7 :|2. III7 :|3. IV7', '| I7 | II7 | I7 | III7 | I7 | IV7 |'],
    ['% before and in a repeat', 'I7 |: % | V7 :|', '| I7 | % | V7 | I7 | V7 |'],
    ['secondary chords and altered degrees', 'V7/V | bVI7 | #IVdim7', '| V7/V | bVI7 | #ivdim7 |'],
    ['signs as printed', '♭VI7 | ♯IVdim7', '| bVI7 | #ivdim7 |'],
  ])('parseForm reads %s', (_what, text, written) => {
    expect(oneLine(text)).toBe(written);
  });

  test('parseForm reads metre and feel before the first bar, before the options', () => {
    expect(parseForm('slow 12/8 | i7 |')).toMatchObject({ metre: '12/8', feel: 'slow-12/8' });
    expect(parseForm('Straight | i7 |')).toMatchObject({ metre: '4/4', feel: 'straight' });
    expect(parseForm('3/4 i7', { metre: '4/4', feel: 'straight' })).toMatchObject({
      metre: '3/4',
      feel: 'straight',
    });
  });

  test('parseForm takes what the text cannot say from the options', () => {
    const details = { id: 'mine', name: 'Mine', description: 'D', use: 'U', source: 'S' };
    expect(parseForm('I7', details)).toMatchObject(details);
  });

  test('parseForm reads chord names in a key', () => {
    expect(oneLine('| Ab7 | Db7 | % | Eb7 Fb7 |', { key: 'Ab' })).toBe(
      '| I7 | IV7 | % | V7 bVI7 |',
    );
    expect(oneLine('| Am7 | D-7 | F7 E7 |', { key: 'Am' })).toBe('| i7 | iv7 | bVI7 V7 |');
    expect(oneLine('| G/B | G7 |', { key: 'G' })).toBe('| I | I7 |');
  });

  test.each([
    ['| I7 | VIII7 |', 2, 1, 8, 'VIII7', /a Roman numeral such as I7 or iv/u],
    ['| I7 |\n| IV7 | x7 |', 3, 2, 9, 'x7', /a Roman numeral such as I7 or iv/u],
    ['| G7 |', 1, 1, 3, 'G7', /a key in which to read chord names/u],
    ['| % |', 1, 1, 3, '%', /no bar before/u],
    ['| / I7 |', 1, 1, 3, '/', /a chord before/u],
    ['| I7 % |', 1, 1, 6, '%', /% alone/u],
    ['| I7 | | IV7 |', 2, 1, 8, '|', /in the bar before this bar line/u],
    ['| I7 |\n:| IV7 |', 2, 2, 1, ':|', /in the bar before this bar line/u],
    ['|| | I7', 1, 1, 4, '|', /in the bar before this bar line/u],
    ['| I7 2. |', 1, 1, 6, '2.', /number of an ending/u],
    ['|: I7 | IV7 |', 1, 1, 4, 'I7', /:\| to close the \|:/u],
    ['|: I7 |: IV7 :|', 2, 1, 10, 'IV7', /repeat before it to be closed/u],
    ['|: I7 |1. IV7 :| V7 |', 3, 1, 18, 'V7', /an ending 2\./u],
    ['|: I7 |1. IV7 :|', 2, 1, 8, 'IV7', /an ending 2\. after it/u],
    ['|: I7 |1. IV7 :|3. V7 |', 3, 1, 17, 'V7', /begins with 2\./u],
    ['|: I7 |2. IV7 :|', 2, 1, 8, 'IV7', /begins with 1\./u],
    ['|: I7 |1. IV7 |2. V7 |', 3, 1, 16, 'V7', /:\| to close the ending/u],
    ['|: I7 |1. IV7 :|2.3. V7 |', 3, 1, 17, 'V7', /:\| to close the ending/u],
    ['|1. I7 :|2. V7', 1, 1, 2, 'I7', /bars to repeat/u],
    ['|: I7 |1. % :|2. V7', 2, 1, 11, '%', /does not begin with %/u],
    ['|: I7 |1. :|2. V7', 2, 1, 8, '1.', /a chord after the number/u],
    ['| I7 : |', 1, 1, 6, ':', /a Roman numeral such as I7 or iv/u],
    ['| I7 | IV7 | V7 / x7', 3, 1, 19, 'x7', /a Roman numeral such as I7 or iv/u],
    [`| I7 | IV7 ${'/ '.repeat(64)}|`, 2, 1, 138, '/', /at most 64 marks in a bar/u],
    ['', 1, 1, 1, '', /at least one bar/u],
    ['| |', 1, 1, 3, '|', /in the bar before/u],
    ['4/4', 1, 1, 1, '4/4', /at least one bar/u],
  ])('parseForm says where %j is wrong', (text, bar, line, column, value, expected) => {
    expect(errorOf(text)).toMatchObject({
      code: 'FORM_SYNTAX',
      value,
      expected: expect.stringMatching(expected),
      where: { bar, line, column },
    });
  });

  test('parseForm says what name is nearest', () => {
    expect(errorOf('| I7 | IVmjr7 |').nearest).toBe('IVmaj7');
    expect(errorOf('| G7 | H7 |', { key: 'G' })).toMatchObject({
      code: 'FORM_SYNTAX',
      where: { bar: 2, line: 1, column: 8 },
    });
  });

  test('parseForm refuses more than it can hold', () => {
    expect(errorOf('I7 |'.repeat(1025))).toMatchObject({
      code: 'FORM_SYNTAX',
      where: { bar: 1025 },
    });
    expect(errorOf(`|: ${'I7 |'.repeat(600)} V7 :|`)).toMatchObject({ where: { bar: 601 } });
    expect(errorOf(`I7 ${'/ '.repeat(64)}`)).toMatchObject({ expected: /at most 64 marks/u });
    expect(errorOf(' '.repeat(100_001)).expected).toMatch(/100000 characters/u);
    expect(errorOf(7 as unknown as string).code).toBe('FORM_SYNTAX');
  });

  test.each([
    [{ key: 'H' }, 'KEY_UNKNOWN'],
    [{ id: 'Not an id' }, 'FORM_INVALID'],
    [{ metre: '4/5' }, 'METRE_UNKNOWN'],
    [{ feel: 'swing' }, 'OPTION_UNKNOWN'],
  ])('parseForm refuses the option %j with %s', (options, code) => {
    expect(errorOf('| I7 |', options).code).toBe(code);
  });

  test('parseForm refuses a metre that there is not', () => {
    expect(errorOf('13/7 | I7 |').code).toBe('METRE_UNKNOWN');
  });

  test.each(['valueOf', '__proto__', 'constructor', 'toString'])('parseForm refuses %s', (mark) => {
    expect(errorOf(`| ${mark} |`).code).toBe('FORM_SYNTAX');
    expect(errorOf(`| ${mark} |`, { key: 'C' }).code).toBe('FORM_SYNTAX');
  });
});

describe('formatForm', () => {
  test('formatForm sets four bars to a line, bar lines under each other', () => {
    const form = parseForm('I7 | I7 | I7 | v7 I7 | IV7 | #IVdim7 | I7 | VI7');
    expect(formatForm(form)).toBe('| I7  | %       | %  | v7 I7 |\n| IV7 | #ivdim7 | I7 | VI7   |');
  });

  test('formatForm writes the first bar of a line out', () => {
    expect(formatForm(parseForm('I7 | I7 | I7 | I7'), { barsPerLine: 2 })).toBe(
      '| I7 | % |\n| I7 | % |',
    );
  });

  test('formatForm writes metre and feel unless they are a shuffle in four-four', () => {
    expect(formatForm(parseForm('3/4 I'))).toBe('shuffle 3/4\n| I |');
    expect(formatForm(parseForm('straight I'))).toBe('straight 4/4\n| I |');
    expect(formatForm(parseForm('shuffle 4/4 I'))).toBe('| I |');
  });

  test('formatForm writes chord names in a key', () => {
    expect(formatForm(parseForm('I7 V7/V | N.C.'), { key: 'Eb' })).toBe('| Eb7 F7 | N.C. |');
  });

  test.each([0, -1, 1.5, Number.NaN])('formatForm refuses %d bars to a line', (barsPerLine) => {
    expect(() => formatForm(parseForm('I'), { barsPerLine })).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE' }),
    );
  });
});

describe('parseForm and formatForm', () => {
  const perLine = fc.integer({ min: 1, max: 30 });

  test('parseForm undoes formatForm for any form', () => {
    fc.assert(
      fc.property(formsOf(), perLine, (form, barsPerLine) => {
        expect(parseForm(formatForm(form, { barsPerLine }), { name: form.name })).toEqual(form);
      }),
    );
  });

  test('parseForm undoes formatForm for every form of the catalogue', () => {
    for (const { id, name, description, use, source, ...form } of FORMS) {
      const details = { id, name, description, use, source };
      expect(parseForm(formatForm({ ...form, ...details }), details)).toEqual({
        ...form,
        ...details,
      });
    }
  });

  test('parseForm undoes formatForm with chord names, in every key, for numerals without a slash', () => {
    fc.assert(
      fc.property(formsOf(plainNumerals), tonics, perLine, (form, key, barsPerLine) => {
        const text = formatForm(form, { key, barsPerLine });
        const again = parseForm(text, { key, name: form.name });
        expect(chordsHeard(again, key)).toEqual(chordsHeard(form, key));
        if (hasNamedRoots(form, key)) expect(again).toEqual(form);
      }),
    );
  });

  test('formatForm of parseForm is stable, however the text was written', () => {
    const marks = fc.oneof(numerals, fc.constantFrom('%', '/', 'N.C.', 'I7', 'IV7'));
    const lines = fc.constantFrom(' | ', '|', ' || ', ' |: ', ' :| ', ' |\n| ', ' |1. ', ' :|2. ');
    const texts = fc
      .array(fc.tuple(marks, lines), { minLength: 1, maxLength: 12 })
      .map((parts) => parts.flat().join(''));
    let read = 0;
    fc.assert(
      fc.property(texts, (text) => {
        const form = formOrError(text);
        if (form === undefined) return;
        read += 1;
        expect(formatForm(parseForm(formatForm(form)))).toBe(formatForm(form));
      }),
      { numRuns: 1000 },
    );
    expect(read).toBeGreaterThan(100);
  });

  test('parseForm gives a form or a typed error for any text at all', () => {
    const scraps = fc.constantFrom(
      '|',
      ':',
      '|:',
      ':|',
      '%',
      '/',
      '1.',
      '2.',
      'I7',
      'iv',
      '\n',
      ' ',
      'N.C.',
      '12/8',
      'V7/',
    );
    const texts = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 200 }),
      fc.array(scraps, { maxLength: 60 }).map((parts) => parts.join('')),
      fc.array(scraps, { maxLength: 60 }).map((parts) => parts.join(' ')),
    );
    fc.assert(
      fc.property(texts, fc.option(tonics), (text, key) => {
        formOrError(text, key === null ? {} : { key });
      }),
      { numRuns: 1000 },
    );
  });
});

function formOrError(text: string, options = {}) {
  try {
    return parseForm(text, options);
  } catch (error) {
    expect(error).toMatchObject({
      name: 'ReedplateError',
      code: expect.stringMatching(/^(?:FORM_SYNTAX|METRE_UNKNOWN)$/u),
    });
    return undefined;
  }
}

function chordsHeard(form: Form, key: Tonic): readonly unknown[] {
  return form.bars.flat().map(({ numeral, weight }) => {
    const tones = numeral === null ? [] : chordOfNumeral(numeral, key).tones;
    return [weight, tones.map(({ pitchClass }) => pitchClass)];
  });
}

/** Whether no root is more than two sharps or flats away, where notes have no names, by tonal. */
function hasNamedRoots(form: Form, key: Tonic): boolean {
  const numerals = form.bars.flat().flatMap(({ numeral }) => numeral ?? []);
  return numerals.map(parseNumeral).every(({ step, alteration }) => {
    const interval = INTERVALS.get(alteration)?.[step - 1] ?? '';
    return Math.abs(Note.get(Note.transpose(key, interval)).alt) <= 2;
  });
}

const INTERVALS = new Map([
  [-1, ['1d', '2m', '3m', '4d', '5d', '6m', '7m']],
  [0, ['1P', '2M', '3M', '4P', '5P', '6M', '7M']],
  [1, ['1A', '2A', '3A', '4A', '5A', '6A', '7A']],
]);
