import type { Harp, TechniqueLevel } from '@reedplate/layout';
import { type Line, makeLine } from '@reedplate/line';
import { formatTab, type TabDialectId, tabOfLine } from '@reedplate/tab';
import { graceTargets } from '../grace-notes.js';

/** How {@link tabWords} chooses and writes. */
export interface TabWordsOptions {
  /** What the player can do; default `overbends`. */
  readonly level?: TechniqueLevel;
  /** Default `sign`. */
  readonly dialect?: TabDialectId;
}

/**
 * Tab for the words under a score: one for each time that notes of the line begin, grace notes aside,
 * each note in its plainest way.
 *
 * @throws ReedplateError `SOUNDING_IMPOSSIBLE` for a note that the harp does not have
 * @example
 * ```ts
 * import { makeHarp } from '@reedplate/layout';
 * import { makeLine } from '@reedplate/line';
 * import { tabWords } from '@reedplate/interchange';
 *
 * tabWords(makeLine([{ start: 0, duration: 960, pitch: 70 }]), makeHarp('C')); // => ["-3'"]
 * ```
 */
export function tabWords(
  line: Line,
  harp: Harp,
  { level, dialect }: TabWordsOptions = {},
): readonly string[] {
  const { notes, ...head } = line;
  const targets = graceTargets(notes);
  const counted = notes.filter((_, at) => targets[at] === undefined);
  return tabOfLine(makeLine(counted, head), harp, level === undefined ? {} : { level })
    .filter(({ marks }) => marks.length > 0)
    .map(({ marks }) => formatTab([marks], dialect === undefined ? {} : { dialect }));
}
