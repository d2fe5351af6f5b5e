import { FORMS, formatForm, formById, makeForm, parseForm } from '@reedplate/form';
import { parseKey, ReedplateError } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readFormWords } from './read-form.js';

const reading = (text = '', key = 'C') => ({
  key: parseKey(key),
  terminal: { readText: () => text },
});
const noFile = {
  key: parseKey('C'),
  terminal: {
    readText: (path: string): string => {
      throw new ReedplateError({ code: 'FILE_UNREADABLE', value: path, expected: 'a file' });
    },
  },
};

describe('readFormWords', () => {
  test('readFormWords takes the id of every form of the catalogue, without reading a file', () => {
    for (const { id } of FORMS) expect(readFormWords(id, noFile)).toBe(formById(id));
  });

  test('readFormWords reads what formatForm writes of any form, from words and from a file', () => {
    fc.assert(
      fc.property(fc.constantFrom(...FORMS), (form) => {
        const text = formatForm(form);
        expect(readFormWords(text, noFile).bars).toEqual(form.bars);
        expect(readFormWords('song.txt', reading(text)).bars).toEqual(form.bars);
        expect(readFormWords('song.json', reading(JSON.stringify(form)))).toEqual(form);
      }),
    );
  });

  test.each([
    ['| G7 | C7 |', 'G', 'I7 IV7'],
    ['| G7 | C7 |', 'C', 'V7 I7'],
    ['|: Am7 :| E7', 'Am', 'i7 i7 V7'],
    ['I7 | bVI7', 'Eb', 'I7 bVI7'],
    ['| N.C. | D7 |', 'G', 'N.C. V7'],
  ])('readFormWords reads %j in %s as %s', (words, key, numerals) => {
    const { bars } = readFormWords(words, reading('', key));
    expect(bars.map(([chord]) => chord?.numeral ?? 'N.C.').join(' ')).toBe(numerals);
  });

  test('readFormWords tells JSON from bars by its first sign, whatever the file is called', () => {
    const form = makeForm([[{ numeral: 'IV7', weight: 1 }]]);
    expect(readFormWords('-', reading(`\n ${JSON.stringify(form)}`)).bars).toEqual(form.bars);
    expect(readFormWords('form.json', reading('I7 | V7')).bars).toEqual(parseForm('I7 | V7').bars);
  });

  test.each([
    ['quick-chnage', '', 'FORM_UNKNOWN', {}],
    ['I7 | IX7', '', 'FORM_SYNTAX', { bar: 2 }],
    ['song.txt', 'I7 | IX7', 'FORM_SYNTAX', { bar: 2, file: 'song.txt' }],
    ['song.json', '{', 'JSON_MALFORMED', { file: 'song.json' }],
    ['song.json', '{"bars":[]}', 'FORM_INVALID', { file: 'song.json' }],
  ])('readFormWords refuses %j with %j in the file', (words, text, code, where) => {
    expect(() => readFormWords(words, reading(text))).toThrow(
      expect.objectContaining({ code, where: expect.objectContaining(where) }),
    );
  });

  test('readFormWords says of bars without bar lines how they are written', () => {
    expect(() => readFormWords('G7 C7 D7', noFile)).toThrow(
      expect.objectContaining({
        code: 'FORM_UNKNOWN',
        value: 'G7 C7 D7',
        expected: 'the id of a form, or bars with a line between them: "I7 | IV7 | V7"',
      }),
    );
  });

  test('readFormWords passes on that a file cannot be read', () => {
    expect(() => readFormWords('./gone', noFile)).toThrow(
      expect.objectContaining({ code: 'FILE_UNREADABLE', value: './gone' }),
    );
  });
});
