import { type HarpLike, type Sounding, toHarp } from '@reedplate/layout';
import { barBeatAt, type Line, makeLine } from '@reedplate/line';
import { requireOptions } from '@reedplate/pitch';
import { bestPath } from './best-path.js';
import { eventsOf, type LineEvent } from './line-events.js';
import type { UnplayableEvent } from './not-playable.js';
import { PATH_OPTIONS, type PathOptions } from './path.js';

/** As much of a path as a harp has. */
export interface PathInPart {
  /** What sounds each event of the line, from the low end; empty for an event that the harp lacks. */
  readonly soundings: readonly (readonly Sounding[])[];
  /** Every event that it lacks, with the reason. */
  readonly missing: readonly UnplayableEvent[];
}

/**
 * The easiest way to play a line, or as much of it as the harp has: where it lacks an event, the easiest way
 * to play the others.
 *
 * @throws ReedplateError as `bestPath`
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { pathInPart } from '@reedplate/playability';
 *
 * const notes = [67, 20].map((pitch, at) => ({ start: at * 960, duration: 960, pitch }));
 * const { soundings, missing } = pathInPart(makeLine(notes), 'C');
 * soundings.map(({ length }) => length); // => [1, 0]
 * missing[0]?.obstacle; // => 'out-of-range'
 * pathInPart(makeLine([]), 'C'); // throws LINE_EMPTY
 * ```
 */
export function pathInPart(line: Line, given: HarpLike, options: PathOptions = {}): PathInPart {
  const checked = requireOptions(options, PATH_OPTIONS, 'pathInPart');
  const harp = toHarp(given, checked.known);
  const path = bestPath(line, harp, checked);
  if (path.playable)
    return Object.freeze({ soundings: path.soundings, missing: Object.freeze([]) });
  const events = eventsOf(line);
  const lacks = (event: LineEvent) => bestPath(only(line, [event]), harp, checked);
  const known = new Map<string, ReturnType<typeof lacks>>();
  const missing: UnplayableEvent[] = [];
  const had: LineEvent[] = [];
  for (const [index, event] of events.entries()) {
    const name = event.pitches.join(' ');
    const alone = known.get(name) ?? lacks(event);
    known.set(name, alone);
    const [obstacle] = alone.playable ? [] : alone.first;
    if (obstacle === undefined) had.push(event);
    else missing.push({ ...obstacle, event: index, ...barBeatAt(event.start, line) });
  }
  const rest = had.length === 0 ? undefined : bestPath(only(line, had), harp, checked);
  const found = rest?.playable === true ? [...rest.soundings] : [];
  const lacking = new Set(missing.map(({ event }) => event));
  const soundings = events.map((_, at) => (lacking.has(at) ? [] : (found.shift() ?? [])));
  return Object.freeze({ soundings: Object.freeze(soundings), missing: Object.freeze(missing) });
}

/** A line of these events alone. */
function only({ notes: _, ...head }: Line, events: readonly LineEvent[]): Line {
  const notes = events.flatMap(({ start, end, pitches }) =>
    pitches.map((pitch) => ({ start, duration: end - start, pitch })),
  );
  return makeLine(notes, head);
}
