import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { requireShape, type Shape } from './shape.js';

interface Sample {
  readonly notes: readonly number[];
  readonly pickup: number;
  readonly title: string;
  readonly key: object;
}

const SHAPE: Shape<Sample> = { notes: 'list', pickup: 'number', title: 'text', key: 'object' };
const GOOD: Sample = { notes: [60], pickup: 0, title: '', key: {} };
const WORDS = { what: 'a sample, as makeSample gives it', code: 'LINE_INVALID' } as const;

describe('requireShape', () => {
  test('requireShape gives back what has the fields, the same object, with others too', () => {
    const more = { ...GOOD, more: 1 };
    expect(requireShape<Sample>(more, SHAPE, WORDS)).toBe(more);
  });

  test('requireShape refuses what is no object', () => {
    for (const value of [null, undefined, 'C4', 7, true, [], () => GOOD]) {
      expect(() => requireShape(value as unknown as Sample, SHAPE, WORDS)).toThrow(
        expect.objectContaining({ code: 'LINE_INVALID', value, expected: WORDS.what, where: {} }),
      );
    }
  });

  test('requireShape names the field that is missing or of another kind, within its path', () => {
    for (const field of Object.keys(SHAPE)) {
      for (const value of [undefined, null, true, Number.NaN, () => 0]) {
        const path = 'samples[2]';
        const wrong = { ...GOOD, [field]: value };
        expect(() => requireShape(wrong, SHAPE, { ...WORDS, path })).toThrow(
          expect.objectContaining({ value, where: { path: `${path}.${field}` } }),
        );
        expect(() => requireShape(wrong, SHAPE, WORDS)).toThrow(
          expect.objectContaining({ value, where: { path: field } }),
        );
      }
    }
  });

  test('requireShape answers or throws the typed error, whatever comes', () => {
    fc.assert(
      fc.property(fc.anything(), (value) => {
        try {
          requireShape(value as Sample, SHAPE, WORDS);
        } catch (error) {
          expect(error).toMatchObject({ name: 'ReedplateError', code: 'LINE_INVALID' });
        }
      }),
    );
  });
});
