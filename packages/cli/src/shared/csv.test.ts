import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { setCsv } from './csv.js';

const cells = fc.stringMatching(/^[a-z0-9#b' +-]{0,9}$/u);

describe('setCsv', () => {
  test('setCsv heads the columns by the fields, and quotes what holds commas or quotes', () => {
    expect(setCsv([{ name: 'low F, "old"', bends: 2 }])).toBe('name,bends\n"low F, ""old""",2\n');
  });

  test('setCsv writes a row a record, whatever they hold', () => {
    fc.assert(
      fc.property(fc.array(fc.record({ a: cells, b: fc.integer() }), { minLength: 1 }), (rows) => {
        expect(setCsv(rows).trimEnd().split('\n')).toHaveLength(rows.length + 1);
      }),
    );
  });
});
