import { type Harp, TECHNIQUE_LEVELS, type TechniqueLevel, transposeHarp } from '@reedplate/layout';
import { type Line, transposeLine } from '@reedplate/line';
import { isReedplateError } from '@reedplate/pitch';
import { inPoints } from './figures.js';
import { makeProblem } from './problem.js';
import { cheapestWay } from './search.js';
import type { Setting } from './setting.js';

/** A change with which a line can be played, and its least effort in points. */
export type PathAlternative =
  | { readonly change: 'level'; readonly level: TechniqueLevel; readonly effort: number }
  /** The line moved by whole octaves; `semitones` up, negative down. */
  | { readonly change: 'octave'; readonly semitones: number; readonly effort: number }
  /** A harp of the same tuning in another key. */
  | { readonly change: 'harp'; readonly harp: Harp; readonly effort: number };

const OCTAVES = [-12, 12, -24, 24] as const;
const OTHER_KEYS = [-1, 1, -2, 2, -3, 3, -4, 4, -5, 5, -6] as const;
const MOST_HARPS = 3;

/**
 * What makes a line playable that is not: the next level that does, the nearest octaves, and the
 * easiest harps of the same tuning within half an octave; in this order, the easiest first of each.
 */
export function alternativesTo(
  line: Line,
  harp: Harp,
  setting: Setting,
): readonly PathAlternative[] {
  return Object.freeze([
    ...levelsUp(line, harp, setting),
    ...octaves(line, harp, setting),
    ...otherKeys(line, harp, setting),
  ]);
}

function levelsUp(line: Line, harp: Harp, setting: Setting): readonly PathAlternative[] {
  // A player that is no level may lack what any of them has.
  const now = TECHNIQUE_LEVELS.indexOf(setting.level as TechniqueLevel);
  const higher = TECHNIQUE_LEVELS.slice(now + 1);
  const found = higher.flatMap((level): PathAlternative[] => {
    const effort = leastEffort(line, harp, { ...setting, level });
    return effort === undefined ? [] : [Object.freeze({ change: 'level', level, effort })];
  });
  return found.slice(0, 1);
}

function octaves(line: Line, harp: Harp, setting: Setting): readonly PathAlternative[] {
  const found = OCTAVES.flatMap((semitones): PathAlternative[] => {
    const moved = orUndefined(() => transposeLine(line, semitones));
    const effort = moved && leastEffort(moved, harp, setting);
    return effort === undefined ? [] : [Object.freeze({ change: 'octave', semitones, effort })];
  });
  return found.sort(byEffort);
}

function otherKeys(line: Line, harp: Harp, setting: Setting): readonly PathAlternative[] {
  const found = OTHER_KEYS.flatMap((semitones): PathAlternative[] => {
    const moved = orUndefined(() => transposeHarp(harp, semitones));
    const effort = moved && leastEffort(line, moved, setting);
    if (moved === undefined || effort === undefined) return [];
    return [Object.freeze({ change: 'harp', harp: moved, effort })];
  });
  return found.sort(byEffort).slice(0, MOST_HARPS);
}

const byEffort = (a: PathAlternative, b: PathAlternative): number => a.effort - b.effort;

function leastEffort(line: Line, harp: Harp, setting: Setting): number | undefined {
  const way = cheapestWay(makeProblem(line, harp, setting.model, setting));
  return way && inPoints(way.cost);
}

/** A move past the range of notes or of registers is no alternative. */
function orUndefined<Value>(move: () => Value): Value | undefined {
  try {
    return move();
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    return undefined;
  }
}
