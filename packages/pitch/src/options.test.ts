import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type OptionNames, requireOptions } from './options.js';

interface Sample {
  readonly tempo?: number;
  readonly choruses?: number;
}

const NAMES: OptionNames<Sample> = { tempo: true, choruses: true };

describe('requireOptions', () => {
  test('requireOptions gives back options that exist, the same object', () => {
    const options: Sample = { tempo: 100 };
    expect(requireOptions(options, NAMES, 'play')).toBe(options);
    expect(requireOptions({}, NAMES, 'play')).toEqual({});
  });

  test('requireOptions names the nearest option that there is', () => {
    expect(() => requireOptions({ chorus: 2 } as Sample, NAMES, 'play')).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN', value: 'chorus', nearest: 'choruses' }),
    );
  });

  test('requireOptions takes no name that every object has', () => {
    expect(() => requireOptions({ toString: 1 } as Sample, NAMES, 'play')).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN', value: 'toString' }),
    );
  });

  test('requireOptions refuses whatever is no plain object of options', () => {
    const wrong = fc.oneof(
      fc.constant(null),
      fc.string(),
      fc.double(),
      fc.boolean(),
      fc.array(fc.anything()),
    );
    fc.assert(
      fc.property(wrong, (value) => {
        expect(() => requireOptions(value as Sample, NAMES, 'play')).toThrow(
          expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
        );
      }),
    );
  });

  test('a list of names that leaves one out does not compile', () => {
    // @ts-expect-error choruses is an option too
    const names: OptionNames<Sample> = { tempo: true };
    expect(names).toEqual({ tempo: true });
  });
});
