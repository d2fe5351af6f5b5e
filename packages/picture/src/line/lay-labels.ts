/** A label that wants to begin at a place. */
export interface Label {
  readonly text: string;
  readonly x: number;
  readonly width: number;
}

/** A label with the lane that it was given, 0 nearest to what it belongs to. */
export interface PlacedLabel extends Label {
  readonly lane: number;
}

/**
 * Gives labels lanes so that none meets another: each the nearest that is free. Where a label would
 * pass the right edge it moves to the left.
 */
export function layLabels(
  labels: readonly Label[],
  { right, gap }: { readonly right: number; readonly gap: number },
): readonly PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  for (const label of labels) {
    const x = Math.min(label.x, right - label.width);
    let lane = 0;
    while (
      placed.some(
        (other) =>
          other.lane === lane && x < other.x + other.width + gap && other.x < x + label.width + gap,
      )
    ) {
      lane += 1;
    }
    placed.push({ ...label, x, lane });
  }
  return placed;
}

/** How many lanes labels take. */
export function lanesOf(labels: readonly PlacedLabel[]): number {
  return Math.max(1, ...labels.map(({ lane }) => lane + 1));
}
