import type { Harp } from '@reedplate/layout';
import { type LineOptions, parseMetre } from '@reedplate/line';
import { deepFreeze, ReedplateError } from '@reedplate/pitch';
import { detectTab, lineOfTab, parseTimedTab, type TabDialectId } from '@reedplate/tab';
import { tabWithoutLengths } from '../formats/tab-text.js';
import { chartOfMarks } from '../notation/chart-of-marks.js';
import type { Piece } from '../piece.js';
import { makeWarningList, type WarningList } from '../warning.js';
import { chordMarksOf, tabRowsOf } from './tab-rows.js';

/** How tablature is read. */
export interface ReadTabOptions {
  readonly harp?: Harp | undefined;
  readonly dialect?: TabDialectId | undefined;
  /** What goes before what the text says of itself. */
  readonly tabHead?: LineOptions | undefined;
}

/** Reads tablature with rhythm, its head and the chords above it. */
export function readTab(text: string, { harp, dialect, tabHead }: ReadTabOptions): Piece {
  if (harp === undefined) {
    const expected = 'a harp besides: tablature says holes, not notes';
    throw new ReedplateError({ code: 'HARP_MISSING', value: text, expected });
  }
  const warnings = makeWarningList();
  const rows = tabRowsOf(text);
  const { key, feel = 'straight', ...written } = rows.head;
  const head = { ...written, ...tabHead };
  const holes = harp.holes.length;
  const found = dialect ?? findDialect(rows.tab, holes, warnings);
  const line = lineOfTab(parseTimedTab(rows.tab, { dialect: found, holes }), harp, head);
  const { barTicks } = parseMetre(line.metre);
  const counted = (line.countIn ?? 0) * barTicks;
  const marks = chordMarksOf(rows, line);
  const bars = rows.bars - (line.pickup > 0 ? 1 : 0);
  const chart = chartOfMarks(
    marks.map((mark) => ({ ...mark, start: mark.start - counted })),
    {
      form: 'lead-sheet',
      key: key ?? 'C',
      metre: line.metre,
      pickup: line.pickup,
      feel,
      ...(line.tempo === undefined ? {} : { tempo: line.tempo }),
      end: line.pickup + bars * barTicks - counted,
    },
    warnings,
  );
  return deepFreeze({
    line,
    ...(key === undefined ? {} : { key }),
    ...(chart === undefined ? {} : { chart }),
    parts: [{ name: line.title ?? '', line }],
    warnings: warnings.all(),
  });
}

function findDialect(text: string, holes: number, { add }: WarningList): TabDialectId {
  const { dialect, ambiguous, question } = detectTab(tabWithoutLengths(text), { holes });
  if (ambiguous) add('tab-ambiguous', {}, question);
  return dialect;
}
