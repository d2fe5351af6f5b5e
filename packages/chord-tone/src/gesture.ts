import type { Breath, Harp, Hole } from '@reedplate/layout';

/**
 * How several holes are sounded at once: a `run` of three to five neighbours, a `double-stop` of
 * two neighbours, a `split` of two holes with one to three blocked by the tongue between them.
 */
export type Gesture = 'run' | 'double-stop' | 'split';

/** A hole sounding its unbent note. */
export interface SoundedHole {
  readonly hole: Hole;
  readonly pitch: number;
}

/** Holes sounded together, before any chord is known. */
export interface SoundedHoles {
  readonly gesture: Gesture;
  readonly breath: Breath;
  readonly holes: readonly SoundedHole[];
}

const BREATHS: readonly Breath[] = ['blow', 'draw'];

/** Most holes a mouth covers at once, and widest split. Common practice, no source. */
const WIDEST = 5;

/** Every way to sound neighbouring holes or a split on unbent notes, in a fixed order. */
export function gesturesOf(harp: Harp): readonly SoundedHoles[] {
  return BREATHS.flatMap((breath) => {
    const row = harp.holes.map(({ hole, [breath]: pitch }) => ({ hole, pitch }));
    return [...runs(row), ...pairs(row)].map((part) => ({ ...part, breath }));
  });
}

type Part = Omit<SoundedHoles, 'breath'>;

function runs(row: readonly SoundedHole[]): readonly Part[] {
  return row.flatMap((_, low) =>
    [3, 4, WIDEST]
      .filter((size) => low + size <= row.length)
      .map((size): Part => ({ gesture: 'run', holes: row.slice(low, low + size) })),
  );
}

function pairs(row: readonly SoundedHole[]): readonly Part[] {
  const all = row.flatMap((lower, low) =>
    row.slice(low + 1, low + WIDEST).map((upper, blocked): Part => {
      return { gesture: blocked === 0 ? 'double-stop' : 'split', holes: [lower, upper] };
    }),
  );
  const isDoubleStop = ({ gesture }: Part): boolean => gesture === 'double-stop';
  return [...all.filter(isDoubleStop), ...all.filter((part) => !isDoubleStop(part))];
}
