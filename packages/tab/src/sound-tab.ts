import { type Harp, type Sounding, soundingsAt } from '@reedplate/layout';
import { ReedplateError } from '@reedplate/pitch';
import { formatSounding } from './format-tab.js';
import { markOf, type TabMark } from './tab-mark.js';

/** How {@link soundMark} looks for a sounding. */
export interface SoundOptions {
  /** Whether the harp is half-valved, so that valved bends sound; default false. */
  readonly valved?: boolean;
}

/**
 * What a mark sounds on a harp: the step from tablature to pitch.
 *
 * @throws ReedplateError `HOLE_RANGE` for a hole the harp lacks, `SOUNDING_IMPOSSIBLE` for a bend
 *   or overbend its reeds do not give
 * @example
 * ```ts
 * import { makeHarp } from '@reedplate/layout';
 * import { parseTab, soundMark } from '@reedplate/tab';
 *
 * const harp = makeHarp('C');
 * parseTab("-2 -2''").map(([mark]) => mark && soundMark(mark, harp).pitch); // => [67, 65]
 * parseTab("-2'''").map(([mark]) => mark && soundMark(mark, harp).pitch); // throws SOUNDING_IMPOSSIBLE
 * ```
 */
export function soundMark(
  mark: TabMark,
  harp: Harp,
  { valved = false }: SoundOptions = {},
): Sounding {
  const possible = soundingsAt(harp, mark.hole, mark.breath, { level: 'overbends', valved });
  const found = possible.find((sounding) => sameMark(markOf(sounding), mark));
  if (found !== undefined) return found;
  throw new ReedplateError({
    code: 'SOUNDING_IMPOSSIBLE',
    value: mark,
    expected: `one of ${possible.map((sounding) => formatSounding(sounding)).join(', ')}`,
    where: { hole: mark.hole, breath: mark.breath },
  });
}

function sameMark(a: TabMark, b: TabMark): boolean {
  return a.hole === b.hole && a.breath === b.breath && a.bend === b.bend && a.over === b.over;
}
