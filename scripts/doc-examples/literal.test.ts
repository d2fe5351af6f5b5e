import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isLiteral, parseExpression, writeLiteral } from './literal.js';

describe('writeLiteral', () => {
  test('writes what reads back as the same data, on one line', () => {
    const plain = fc.jsonValue({ stringUnit: 'binary' });
    fc.assert(
      fc.property(plain, (value) => {
        const written = writeLiteral(value);
        expect(written).not.toContain('\n');
        expect(new Function(`return (${written})`)()).toEqual(value);
      }),
    );
  });

  test('writes what isLiteral accepts', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const expression = parseExpression(writeLiteral(value));
        expect(expression !== undefined && isLiteral(expression)).toBe(true);
      }),
    );
  });

  test('writes a field named __proto__ as a field', () => {
    const value = JSON.parse('{ "__proto__": 1 }');
    expect(writeLiteral(value)).toBe("{ ['__proto__']: 1 }");
  });

  test('writes the house style: single quotes, bare keys, fields that are undefined left out', () => {
    expect(writeLiteral({ a: 'x', 'b-c': ["it's"], d: undefined, e: -0 })).toBe(
      `{ a: 'x', 'b-c': ["it's"], e: -0 }`,
    );
  });

  test.each([[new Map()], [() => 1], [Symbol('s')], [new Date(0)]])('refuses %s', (value) => {
    expect(() => writeLiteral(value)).toThrow('plain data');
  });
});
