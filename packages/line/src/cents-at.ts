import { requireShape } from '@reedplate/pitch';
import { checkCurve, requireCents } from './check-curve.js';
import { LARGEST_CENTS } from './check-note.js';
import { invalidLine } from './invalid-line.js';
import type { NoteExpression } from './line.js';

const NOTE = { what: 'a note', code: 'LINE_INVALID' } as const;

/**
 * Cents that a note sounds above its pitch at a moment: by its curve where it has one, else by its
 * `cents`; 0 where it has neither.
 *
 * @param at ticks after the note begins; before the first point and after the last the curve is level
 * @throws ReedplateError `LINE_INVALID`
 * @example
 * ```ts
 * import { centsAt } from '@reedplate/line';
 *
 * const scoop = { start: 0, duration: 960, pitch: 67, curve: [{ at: 0, cents: -90 }, { at: 240, cents: 0 }] };
 * centsAt(scoop, 80); // => -60
 * centsAt(scoop, 960); // => 0
 * centsAt({ cents: -18 }, 0); // => -18
 * ```
 */
export function centsAt(note: NoteExpression, at: number): number {
  const { curve: given = [], cents = 0 } = requireShape(note, {}, NOTE);
  const curve = checkCurve(given, Number.MAX_SAFE_INTEGER, (path) => ({ path }));
  requireCents(cents, LARGEST_CENTS, { path: 'cents' });
  if (!Number.isFinite(at)) throw invalidLine(at, 'ticks after the note begins', {});
  const after = curve.findIndex((point) => point.at > at);
  const right = curve[after];
  const left = after === -1 ? curve.at(-1) : curve[after - 1];
  if (left === undefined) return right?.cents ?? cents;
  if (right === undefined) return left.cents;
  return left.cents + ((right.cents - left.cents) * (at - left.at)) / (right.at - left.at);
}
