import {
  type Breath,
  type Harp,
  type Hole,
  type PlayerLike,
  soundingsAt,
  toPlayer,
} from '@reedplate/layout';
import { itemAt } from '@reedplate/pitch';

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

/**
 * Every way that a player has to sound neighbouring holes or a split on unbent notes, in a fixed order.
 * Within a chord 2 draw is had also by who does not yet hold it alone.
 */
export function gesturesOf(harp: Harp, level: PlayerLike): readonly SoundedHoles[] {
  const { splits } = toPlayer(level);
  const chordal = typeof level === 'string' ? level : { ...level, holdsTwoDraw: true };
  return BREATHS.flatMap((breath) => {
    const row = harp.holes.map(({ hole, [breath]: pitch }) => ({ hole, pitch }));
    const has = row.map(({ hole }) =>
      soundingsAt(harp, hole, breath, { level: chordal }).some(
        ({ technique }) => technique === 'natural',
      ),
    );
    return [...runs(row), ...pairs(row)]
      .filter(({ holes }) => holes.every(({ hole }) => has[hole - 1]))
      .filter((part) => part.gesture !== 'split' || splits.some((width) => width === widthOf(part)))
      .map((part) => ({ ...part, breath }));
  });
}

type Part = Omit<SoundedHoles, 'breath'>;

const widthOf = ({ holes }: Part): number => itemAt(holes, -1).hole - itemAt(holes, 0).hole + 1;

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
