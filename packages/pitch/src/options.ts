import { ReedplateError } from './error.js';
import { nearestOf } from './nearest.js';

/**
 * The names of all options of a function; leaving one out does not compile.
 *
 * @internal
 */
export type OptionNames<Options> = { readonly [Name in keyof Options]-?: true };

/**
 * Returns `options` if it is an object that holds nothing but options that exist.
 *
 * @internal
 * @param names every option that there is
 * @param of the function, for the message
 * @throws ReedplateError `OPTION_UNKNOWN`, with the nearest option
 * @example
 * ```ts
 * import { requireOptions } from '@reedplate/pitch';
 *
 * requireOptions({ count: 2 }, { count: true }, 'bestPaths'); // => { count: 2 }
 * requireOptions<object>({ cuont: 2 }, { count: true }, 'bestPaths'); // throws OPTION_UNKNOWN
 * ```
 */
export function requireOptions<Options>(
  options: Options,
  names: OptionNames<Options>,
  of: string,
): Options {
  const known = Object.keys(names);
  if (typeof options !== 'object' || options === null || Array.isArray(options)) {
    throw new ReedplateError({
      code: 'OPTION_UNKNOWN',
      value: options,
      expected: `an object with options of ${of}: ${known.join(', ')}`,
    });
  }
  for (const name of Object.keys(options)) {
    if (!Object.hasOwn(names, name)) throw unknownOption(name, known, of);
  }
  return options;
}

function unknownOption(name: string, known: readonly string[], of: string): ReedplateError {
  return new ReedplateError({
    code: 'OPTION_UNKNOWN',
    value: name,
    expected: `an option of ${of}: ${known.join(', ')}`,
    nearest: nearestOf(name, known),
  });
}
