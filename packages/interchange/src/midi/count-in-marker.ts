/** Most bars that a line is counted in by. */
const MOST = 64;
const MARKER = /^count[- ]?in\b[: ]{0,3}(\d{1,2})?/iu;

/** The marker of bars counted in, at the beginning of a file. */
export function countInMarker(bars: number): string {
  return `Count-in: ${bars} ${bars === 1 ? 'bar' : 'bars'}`;
}

/** The bars that a marker says are counted in, one where it gives no number; `undefined` for another. */
export function barsOfMarker(text: string): number | undefined {
  const found = MARKER.exec(text);
  if (found === null) return undefined;
  const bars = Number(found[1] ?? 1);
  return bars > 0 && bars <= MOST ? bars : undefined;
}
