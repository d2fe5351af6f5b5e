import { type Harp, harpRange, type PlayerLike, soundingsOfPitch } from '@reedplate/layout';
import { barBeatAt, type Line } from '@reedplate/line';
import { itemAt } from '@reedplate/pitch';
import { alternativesTo, type PathAlternative } from './alternatives.js';
import { eventsOf } from './line-events.js';
import type { Problem } from './problem.js';
import type { Setting } from './setting.js';

/**
 * Why an event cannot be sounded: a pitch is `out-of-range` of the harp; its notes have a `gap`
 * there at any level; it is `beyond-level`; or each pitch is there but there is `no-grip` that
 * sounds them together.
 */
export type PathObstacle = 'out-of-range' | 'gap' | 'beyond-level' | 'no-grip';

/** An event that a harp cannot sound. */
export interface UnplayableEvent {
  /** Index among the events of the line, from 0. */
  readonly event: number;
  readonly bar: number;
  readonly beat: number;
  /** MIDI numbers, rising. */
  readonly pitches: readonly number[];
  readonly obstacle: PathObstacle;
}

/** Why a line cannot be played on a harp, and what comes nearest. */
export interface NotPlayable {
  readonly playable: false;
  readonly harp: Harp;
  /** Id of the effort model. */
  readonly model: string;
  /** Who plays, as given. */
  readonly level: PlayerLike;
  /** Share of the line's events that can be sounded, 0 to less than 1. */
  readonly playableShare: number;
  /** Events that cannot be sounded. */
  readonly missing: number;
  /** The first of them, at most five. */
  readonly first: readonly UnplayableEvent[];
  /** Changes with which the whole line can be played: of level, of octave, of harp. */
  readonly alternatives: readonly PathAlternative[];
}

const MOST_LISTED = 5;

/** Says why a line cannot be played. */
export function notPlayable(
  line: Line,
  harp: Harp,
  setting: Setting,
  { times, ways }: Problem,
): NotPlayable {
  const missing = Array.from({ length: times.count }, (_, event) => event).filter(
    (event) => itemAt(ways, itemAt(times.set, event)).length === 0,
  );
  const events = eventsOf(line);
  return Object.freeze({
    playable: false,
    harp,
    model: setting.model.id,
    level: setting.level,
    playableShare: 1 - missing.length / times.count,
    missing: missing.length,
    first: Object.freeze(
      missing.slice(0, MOST_LISTED).map((event) => {
        const { start, pitches } = events[event] as (typeof events)[number];
        const place = barBeatAt(start, line);
        const obstacle = obstacleTo(pitches, harp, setting);
        return Object.freeze({ event, ...place, pitches: Object.freeze(pitches), obstacle });
      }),
    ),
    alternatives: alternativesTo(line, harp, setting),
  });
}

function obstacleTo(
  pitches: readonly number[],
  harp: Harp,
  { level, valved }: Setting,
): PathObstacle {
  const { lowest, highest } = harpRange(harp);
  const isThere = (pitch: number, at: PlayerLike): boolean =>
    soundingsOfPitch(harp, pitch, { level: at, valved }).length > 0;
  const absent = pitches.filter((pitch) => !isThere(pitch, level));
  if (absent.length === 0) return 'no-grip';
  const atAll = absent.filter((pitch) => !isThere(pitch, 'overbends'));
  if (atAll.length === 0) return 'beyond-level';
  return atAll.some((pitch) => pitch < lowest || pitch > highest) ? 'out-of-range' : 'gap';
}
