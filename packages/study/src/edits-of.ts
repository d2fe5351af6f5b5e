import type { ReedEdit, Tuning } from '@reedplate/layout';

/** Every change of one reed, then every pair of changes of two reeds. */
export function editsOf({ holes }: Tuning, within: number, reeds: 1 | 2): readonly ReedEdit[][] {
  const steps = Array.from({ length: within }, (_, index) => index + 1);
  const single = holes.flatMap(({ hole }) =>
    (['blow', 'draw'] as const).flatMap((breath) =>
      [...steps.map((by) => -by).reverse(), ...steps].map((by): ReedEdit => ({ hole, breath, by })),
    ),
  );
  const singles = single.map((edit) => [edit]);
  if (reeds === 1) return singles;
  const perReed = 2 * within;
  const pairs = single.flatMap((first, at) =>
    // The next reed begins after all the changes of this one.
    single.slice((Math.floor(at / perReed) + 1) * perReed).map((second) => [first, second]),
  );
  return [...singles, ...pairs];
}
