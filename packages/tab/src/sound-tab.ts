import { type HarpLike, type KnownTunings, type Sounding, soundingsAt } from '@reedplate/layout';
import { type OptionNames, ReedplateError, requireOptions } from '@reedplate/pitch';
import { formatSounding, formatTab } from './format-tab.js';
import { markOf, requireMark, type TabMark } from './tab-mark.js';

/** How {@link soundMark} looks for a sounding. */
export interface SoundOptions {
  /** Whether the harp is half-valved, so that valved bends sound; default false. */
  readonly valved?: boolean;
  /** Tunings of one's own, for a harp that is named in one. */
  readonly known?: KnownTunings;
}

/** The names of the options of a mark that is sounded. */
export const SOUND_OPTIONS: OptionNames<SoundOptions> = { valved: true, known: true };

/**
 * What a mark sounds on a harp: the step from tablature to pitch.
 *
 * @throws ReedplateError `HOLE_RANGE` for a hole the harp lacks, `SOUNDING_IMPOSSIBLE` for a bend
 *   or overbend its reeds do not give
 * @example
 * ```ts
 * import { parseTab, soundMark } from '@reedplate/tab';
 *
 * parseTab("-2 -2''").map(([mark]) => mark && soundMark(mark, 'C').pitch); // => [67, 65]
 * parseTab("-2'''").map(([mark]) => mark && soundMark(mark, 'C').pitch); // throws SOUNDING_IMPOSSIBLE
 * ```
 */
export function soundMark(mark: TabMark, harp: HarpLike, options: SoundOptions = {}): Sounding {
  const which = requireOptions(options, SOUND_OPTIONS, 'soundMark');
  requireMark(mark);
  const possible = soundingsAt(harp, mark.hole, mark.breath, { ...which, level: 'overbends' });
  const found = possible.find((sounding) => sameMark(markOf(sounding), mark));
  if (found !== undefined) return found;
  throw new ReedplateError({
    code: 'SOUNDING_IMPOSSIBLE',
    value: formatTab([[mark]]),
    expected: `one of ${possible.map((sounding) => formatSounding(sounding)).join(', ')}`,
    where: { hole: mark.hole, breath: mark.breath },
  });
}

function sameMark(a: TabMark, b: TabMark): boolean {
  return a.hole === b.hole && a.breath === b.breath && a.bend === b.bend && a.over === b.over;
}
