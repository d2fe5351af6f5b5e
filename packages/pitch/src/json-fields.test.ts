import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { asErrorOf, midi, readJson, requireFields } from './index.js';

const KNOWN = ['hole', 'breath'] as const;
const failure = (details: object) => expect.objectContaining({ code: 'HARP_INVALID', ...details });

describe('readJson', () => {
  test('readJson reads back what JSON.stringify wrote', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(readJson(JSON.stringify(value))).toEqual(JSON.parse(JSON.stringify(value)));
      }),
    );
  });

  test('readJson leaves what is no text alone', () => {
    for (const value of [null, undefined, 7, ['C4']]) expect(readJson(value)).toBe(value);
  });

  test.each(['', '{', 'nonsense', "{'hole': 4}"])('readJson says that %j is no JSON', (text) => {
    expect(() => readJson(text)).toThrow(
      expect.objectContaining({ code: 'JSON_MALFORMED', value: text, expected: 'JSON text' }),
    );
  });

  test('readJson says where a text goes wrong, where the engine does', () => {
    expect(() => readJson('{"notes": [\n  {"start": 0,}]}')).toThrow(
      expect.objectContaining({ where: { line: 2, column: 15 } }),
    );
  });
});

test('readJson says no place where the text ends too early', () => {
  expect(() => readJson('{"notes": [')).toThrow(expect.objectContaining({ where: {} }));
});

describe('requireFields', () => {
  test('requireFields gives back an object that has no other fields', () => {
    const value = { hole: 4 };
    expect(requireFields(value, KNOWN, { code: 'HARP_INVALID' })).toBe(value);
    expect(requireFields({}, KNOWN, { code: 'HARP_INVALID' })).toEqual({});
  });

  test.each([null, undefined, 7, 'hole', [4]])('requireFields refuses %j', (value) => {
    expect(() => requireFields(value, KNOWN, { code: 'HARP_INVALID' })).toThrow(
      failure({ value, expected: 'an object with hole, breath', where: {} }),
    );
  });

  test('requireFields names a field it does not know, and the nearest it does', () => {
    const holes = { code: 'HARP_INVALID', path: 'holes[3]' } as const;
    expect(() => requireFields({ hoel: 4 }, KNOWN, holes)).toThrow(
      failure({ value: 'hoel', nearest: 'hole', where: { path: 'holes[3].hoel' } }),
    );
    expect(() => requireFields(JSON.parse('{"__proto__":1}'), KNOWN, holes)).toThrow(
      failure({ value: '__proto__' }),
    );
  });
});

describe('asErrorOf', () => {
  test('asErrorOf keeps value, expectation and nearest, and adds where', () => {
    expect(() => asErrorOf('HARP_INVALID', { hole: 4 }, () => midi('H4'))).toThrow(
      failure({ value: 'H4', nearest: 'B4', where: { hole: 4 } }),
    );
  });

  test('asErrorOf lets a defect of our own through', () => {
    const broken = (): never => {
      throw new TypeError('a defect');
    };
    expect(() => asErrorOf('HARP_INVALID', {}, broken)).toThrow(TypeError);
  });
});
