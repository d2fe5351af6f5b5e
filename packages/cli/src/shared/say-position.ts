import { type PositionNumber, positionByNumber } from '@reedplate/position';

/** A position by its number, and by its name in the trade where it has one. */
export function sayPosition(position: PositionNumber): string {
  const { tradeName } = positionByNumber(position);
  return tradeName === undefined ? `${position}` : `${position} (${tradeName})`;
}
