import { ReedplateError } from '@reedplate/pitch';
import type { PiecePart } from './piece.js';

/**
 * The part asked for by number (from 1) or name, or what `find` finds where none is.
 *
 * @throws ReedplateError `OPTION_UNKNOWN` with the parts there are
 */
export function choosePart(
  parts: readonly PiecePart[],
  wanted: number | string | undefined,
  find: (parts: readonly PiecePart[]) => PiecePart | undefined,
): PiecePart | undefined {
  if (wanted === undefined) return find(parts);
  const found =
    typeof wanted === 'number' ? parts[wanted - 1] : parts.find(({ name }) => name === wanted);
  if (found !== undefined) return found;
  const names = parts.map(({ name }, at) => `${at + 1}${name === '' ? '' : ` (${name})`}`);
  throw new ReedplateError({
    code: 'OPTION_UNKNOWN',
    value: wanted,
    expected: `the number or name of a part: ${names.join(', ') || 'there is none with notes'}`,
  });
}
