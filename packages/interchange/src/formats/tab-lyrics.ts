import type { HarpLike, KnownTunings, PlayerLike, Sounding } from '@reedplate/layout';
import { type Line, makeLine, requireLine } from '@reedplate/line';
import { type OptionNames, requireOptions } from '@reedplate/pitch';
import { formatTab, type TabDialectId, tabOfLine } from '@reedplate/tab';
import { graceTargets } from '../grace-notes.js';
import { chooseSoundings } from '../tab/choose-soundings.js';

/** How {@link tabLyrics} chooses and writes. */
export interface TabLyricsOptions {
  /** Who plays, by a level or as a `Player`; default `bends`. */
  readonly level?: PlayerLike;
  /** Default `plus-minus`. */
  readonly dialect?: TabDialectId;
  /** Tunings of one's own, for a harp that is named in one. */
  readonly known?: KnownTunings;
  /** What sounds each event of the line, grace notes aside; default the easiest path. */
  readonly soundings?: readonly (readonly Sounding[])[];
}

const TAB_LYRICS_OPTIONS: OptionNames<TabLyricsOptions> = {
  level: true,
  dialect: true,
  known: true,
  soundings: true,
};

/**
 * Tab for the words under a score: one for each time that notes of the line begin, grace notes aside,
 * by the easiest path; notes that begin together on one breath where the harp has them so.
 *
 * @throws ReedplateError `SOUNDING_IMPOSSIBLE` for a note that the harp does not have
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { tabLyrics } from '@reedplate/interchange';
 *
 * tabLyrics(makeLine([{ start: 0, duration: 960, pitch: 70 }]), 'C'); // => ["-3'"]
 * ```
 */
export function tabLyrics(
  line: Line,
  harp: HarpLike,
  options: TabLyricsOptions = {},
): readonly string[] {
  const { dialect, ...which } = requireOptions(options, TAB_LYRICS_OPTIONS, 'tabLyrics');
  const { notes, ...head } = requireLine(line);
  const targets = graceTargets(notes);
  const counted = notes.filter((_, at) => targets[at] === undefined);
  const plain = makeLine(counted, head);
  const soundings = chooseSoundings(plain, harp, which);
  return Object.freeze(
    tabOfLine(plain, harp, { ...which, soundings })
      .filter(({ marks }) => marks.length > 0)
      .map(({ marks }) => formatTab([marks], dialect === undefined ? {} : { dialect })),
  );
}
