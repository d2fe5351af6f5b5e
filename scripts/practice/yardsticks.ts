import type { Line } from '@reedplate/line';

/** Shares by name; they add up to 1. */
export type Shares = ReadonlyMap<string, number>;

/** How often each value comes, as shares. */
export function sharesOf(values: readonly string[]): Shares {
  const counts = new Map<string, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return new Map([...counts].map(([value, count]) => [value, count / values.length]));
}

/** Half the sum of all differences: 0 where they are the same, 1 where nothing is shared. */
export function distance(a: Shares, b: Shares): number {
  const names = new Set([...a.keys(), ...b.keys()]);
  return (
    [...names].reduce((sum, name) => sum + Math.abs((a.get(name) ?? 0) - (b.get(name) ?? 0)), 0) / 2
  );
}

/** Pitches of a line in order, the highest of what begins together. */
export function melodyOf({ notes }: Pick<Line, 'notes'>): readonly number[] {
  const byStart = new Map<number, number>();
  for (const { start, pitch } of notes)
    byStart.set(start, Math.max(pitch, byStart.get(start) ?? 0));
  return [...byStart.values()];
}

/** Semitones from note to note. */
export function intervalsOf(pitches: readonly number[]): readonly string[] {
  return pitches.slice(1).map((pitch, at) => `${pitch - (pitches[at] ?? pitch)}`);
}

/** Share of four-interval groups that come again in the same line. */
export function repeatedPatterns(pitches: readonly number[]): number {
  const steps = intervalsOf(pitches);
  const groups = steps.slice(3).map((_, at) => steps.slice(at, at + 4).join(' '));
  const counts = sharesOf(groups);
  const again = groups.filter((group) => (counts.get(group) ?? 0) * groups.length > 1.5);
  return groups.length === 0 ? 0 : again.length / groups.length;
}
