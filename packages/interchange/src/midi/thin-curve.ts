import type { PitchPoint } from '@reedplate/line';

/** Cents that a point left out may lie beside the line of those kept: no ear hears one. */
const TOLERANCE = 1;

/**
 * A curve with no more points than it needs: those are kept from which the straight line to the next
 * kept one passes all between within a cent. The time is that of one look at each point.
 */
export function thinCurve(points: readonly PitchPoint[]): readonly PitchPoint[] {
  const [first, ...others] = points;
  if (first === undefined) return points;
  const kept = [first];
  let anchor = first;
  let before = first;
  let slopes = { least: Number.NEGATIVE_INFINITY, most: Number.POSITIVE_INFINITY };
  for (const point of others) {
    if (!isBetween(slopeTo(point, anchor, 0), slopes)) {
      kept.push(before);
      anchor = before;
      slopes = { least: Number.NEGATIVE_INFINITY, most: Number.POSITIVE_INFINITY };
    }
    slopes = {
      least: Math.max(slopes.least, slopeTo(point, anchor, -TOLERANCE)),
      most: Math.min(slopes.most, slopeTo(point, anchor, TOLERANCE)),
    };
    before = point;
  }
  return before === first ? kept : [...kept, before];
}

function slopeTo(point: PitchPoint, anchor: PitchPoint, beside: number): number {
  return (point.cents + beside - anchor.cents) / (point.at - anchor.at);
}

function isBetween(
  slope: number,
  { least, most }: { readonly least: number; readonly most: number },
): boolean {
  return slope >= least && slope <= most;
}
