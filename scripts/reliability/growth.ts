import { isReedplateError } from '@reedplate/pitch';
import type { Pattern } from './pattern.js';
import type { Reader } from './readers.js';

/** How the time of a reader grows with its input. */
export interface Growth {
  /** Milliseconds of the processor for the small and the large input, the least of some runs. */
  readonly small: number;
  readonly large: number;
  /** Power of the size that the time grows by; 0 where the large input takes hardly any time. */
  readonly exponent: number;
}

/** How growth is measured. */
export interface GrowthOptions {
  readonly small: number;
  readonly large: number;
  readonly runs: number;
  /** Milliseconds below which the large input is fast, and a ratio would be noise. */
  readonly fast: number;
}

/** Measures a reader on a pattern in two sizes. */
export function growthOf(
  { read }: Pick<Reader, 'read'>,
  { ofSize }: Pattern,
  { small, large, runs, fast }: GrowthOptions,
): Growth {
  const few = ofSize(small);
  const many = ofSize(large);
  // The first run compiles.
  outcomeOf(() => read(few));
  const first = timeOf(() => outcomeOf(() => read(many)));
  if (first <= fast) return { small: 0, large: first, exponent: 0 };
  const times = (input: string | Uint8Array): number =>
    Math.min(...Array.from({ length: runs }, () => timeOf(() => outcomeOf(() => read(input)))));
  const times2 = [times(few), Math.min(first, times(many))] as const;
  const exponent = Math.log(times2[1] / times2[0]) / Math.log(large / small);
  return { small: times2[0], large: times2[1], exponent: Math.max(0, exponent) };
}

/** Milliseconds of the processor: another program's share does not count. */
function timeOf(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/** What a reader says: `read`, or the code of its error; any other error is thrown on. */
export function outcomeOf(read: () => unknown): string {
  try {
    read();
    return 'read';
  } catch (error) {
    if (isReedplateError(error)) return error.code;
    throw error;
  }
}
