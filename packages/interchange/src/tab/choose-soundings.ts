import type { HarpLike, KnownTunings, PlayerLike, Sounding } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import { pathInPart, type UnplayableEvent } from '@reedplate/playability';

/** What soundings are chosen by. */
export interface ChoiceOptions {
  /** Who plays, by a level or as a `Player`; default `bends`. */
  readonly level?: PlayerLike | undefined;
  /** Tunings of one's own, for a harp that is named in one. */
  readonly known?: KnownTunings | undefined;
  /** What sounds each event, where it is chosen already. */
  readonly soundings?: readonly (readonly Sounding[])[] | undefined;
}

/** What sounds each event of a line: as it was chosen, else the easiest path, empty where the harp has none. */
export function chooseSoundings(
  line: Line,
  harp: HarpLike,
  { soundings, ...which }: ChoiceOptions,
): readonly (readonly Sounding[])[] {
  if (soundings !== undefined || line.notes.length === 0) return soundings ?? [];
  return pathInPart(line, harp, pathOptions(which)).soundings;
}

/** The events whose notes the harp has, but not on one breath within a mouth's reach. */
export function eventsApart(
  line: Line,
  harp: HarpLike,
  which: Omit<ChoiceOptions, 'soundings'>,
): readonly UnplayableEvent[] {
  if (line.notes.length === 0) return [];
  const { missing } = pathInPart(line, harp, pathOptions(which));
  return missing.filter(({ obstacle }) => obstacle === 'no-grip');
}

function pathOptions({ level = 'bends', known }: Omit<ChoiceOptions, 'soundings'>) {
  return { level, ...(known === undefined ? {} : { known }) };
}
