import { ReedplateError } from '@reedplate/pitch';
import type { ChosenPart, FoundPart } from './part-choice.js';
import type { PiecePart } from './piece.js';
import type { WarningList } from './warning.js';

/**
 * The part asked for by number (from 1) or name, or what `find` finds where none is.
 *
 * @throws ReedplateError `OPTION_UNKNOWN` with the parts there are
 */
export function choosePart(
  parts: readonly PiecePart[],
  wanted: number | string | undefined,
  find: (parts: readonly PiecePart[]) => FoundPart | undefined,
): ChosenPart | undefined {
  if (wanted === undefined) return withPart(parts, find(parts));
  const at =
    typeof wanted === 'number' ? wanted - 1 : parts.findIndex(({ name }) => name === wanted);
  if (parts[at] !== undefined) {
    return withPart(parts, { part: at + 1, reasons: ['asked'], ties: [], doubtful: false });
  }
  const names = parts.map(({ name }, index) => `${index + 1}${name === '' ? '' : ` (${name})`}`);
  throw new ReedplateError({
    code: 'OPTION_UNKNOWN',
    value: wanted,
    expected: `the number or name of a part: ${names.join(', ') || 'there is none with notes'}`,
  });
}

function withPart(
  parts: readonly PiecePart[],
  found: FoundPart | undefined,
): ChosenPart | undefined {
  const part = found && parts[found.part - 1];
  if (found === undefined || part === undefined) return undefined;
  const { part: number, ...why } = found;
  return { part, choice: { part: number, name: part.name, ...why } };
}

/** The first part: in a score it is the tune by custom. */
export function findFirst(parts: readonly PiecePart[]): FoundPart | undefined {
  if (parts.length === 0) return undefined;
  const reasons = [parts.length === 1 ? 'only' : 'first'] as const;
  return { part: 1, reasons, ties: [], doubtful: false };
}

/** Warns where another part may as well be the tune, or where none looks like one. */
export function warnOfChoice(chosen: ChosenPart | undefined, warnings: WarningList): void {
  if (chosen === undefined) return;
  const { part, name, ties, doubtful } = chosen.choice;
  const which = name === '' ? `part ${part}` : `part ${part} (${name})`;
  if (doubtful) warnings.add('part-doubtful', {}, which);
  if (ties.length > 0) warnings.add('part-tie', {}, `${[part, ...ties].join(', ')}`);
}
