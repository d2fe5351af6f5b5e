import type { HarpLike, KnownTunings, PlayerLike, Sounding } from '@reedplate/layout';
import { type OptionNames, requireOptions } from '@reedplate/pitch';
import { type TabDialectId, tabOfLine } from '@reedplate/tab';
import type { Sheet } from '../piece.js';
import { requireSheet } from '../require-sheet.js';
import { chooseSoundings } from './choose-soundings.js';
import { setBars } from './set-bars.js';
import { tabBarsOf } from './tab-bars.js';
import { writeTabHead } from './tab-head.js';

/** How {@link writeTab} chooses and writes. */
export interface WriteTabOptions {
  /** Who plays, by a level or as a `Player`; default `bends`. */
  readonly level?: PlayerLike;
  /** Default `plus-minus`. */
  readonly dialect?: TabDialectId;
  /** What sounds each event of the line, as a practice line has chosen it; default the easiest path. */
  readonly soundings?: readonly (readonly Sounding[])[];
  /** Title; default that of the line. */
  readonly title?: string;
  /** What stands behind key, metre, feel and tempo: the harp and its position, say. */
  readonly subtitle?: string;
  /** Tunings of one's own, for a harp that is named in one. */
  readonly known?: KnownTunings;
}

const WRITE_TAB_OPTIONS: OptionNames<WriteTabOptions> = {
  level: true,
  dialect: true,
  soundings: true,
  title: true,
  subtitle: true,
  known: true,
};

/**
 * A sheet as plain text for a slide or a chat: four bars a row, the chords above, tab with its rhythm
 * below, all of it read back by `readPiece`.
 *
 * @throws ReedplateError `SOUNDING_IMPOSSIBLE` with `where.bar` for a note that the harp does not have
 * @example
 * ```ts
 * import { makeChart, parseForm } from '@reedplate/form';
 * import { writeTab } from '@reedplate/interchange';
 * import { makeLine } from '@reedplate/line';
 *
 * const line = makeLine([{ start: 0, duration: 3840, pitch: 67 }, { start: 3840, duration: 3840, pitch: 72 }]);
 * writeTab({ line }, 'C'); // => '+3:4 | +4:4 |\n'
 * const chart = makeChart(parseForm('I7 | IV7'), 'G');
 * writeTab({ line, chart }, 'C').split('\n')[2]; // => 'G7   | C7   |'
 * writeTab({ line }, 'Db', { level: 'natural' }); // throws SOUNDING_IMPOSSIBLE
 * ```
 */
export function writeTab(sheet: Sheet, harp: HarpLike, options: WriteTabOptions = {}): string {
  const {
    dialect = 'plus-minus',
    title,
    subtitle,
    ...which
  } = requireOptions(options, WRITE_TAB_OPTIONS, 'writeTab');
  const { line, chart } = requireSheet(sheet);
  const soundings = chooseSoundings(line, harp, which);
  const timed = tabOfLine(line, harp, { ...which, soundings });
  const head = writeTabHead(sheet, {
    ...(title === undefined ? {} : { title }),
    ...(subtitle === undefined ? {} : { subtitle }),
  });
  const rows = setBars(tabBarsOf(timed, line, { chart, dialect }), line.pickup > 0);
  return `${[...head, ...(head.length === 0 ? [] : ['']), ...rows].join('\n')}\n`;
}
