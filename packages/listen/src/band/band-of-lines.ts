import { type Line, lineEnd, parseMetre, requireLine } from '@reedplate/line';
import {
  deepFreeze,
  itemAt,
  type OptionNames,
  ReedplateError,
  requireOptions,
  requireShape,
} from '@reedplate/pitch';
import { answerOf, BAND_OPTIONS, type BandOptions, settingOf } from './band-reading.js';
import { readAll } from './choose.js';
import { chromaOfNotes } from './front/chroma-of-notes.js';
import type { RhythmGrid } from './grids.js';
import type { BandReading } from './heard-band.js';

/** What the parts of a band make, told by their notes. */
export interface BandOfLines extends BandReading {
  /**
   * Tick of the lines at which bar 1 of the chart begins.
   * @minimum 0
   * @asType integer
   */
  readonly start: number;
}

const OPTIONS: OptionNames<BandOptions> = BAND_OPTIONS;

/**
 * What a band plays whose parts are known note by note, as from a MIDI file or MusicXML without chord symbols: its
 * key, the chord of each bar, and which form of the catalogue that is. Parts are lines in one metre; drums are none.
 *
 * @param lines the parts, all on the same ticks
 * @throws ReedplateError `LINE_EMPTY` without a note, `LINE_INVALID` for what is no line, or lines in different
 * metres; `KEY_UNKNOWN`, `FORM_UNKNOWN`, `FORM_INVALID`, `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { bandOfLines } from '@reedplate/listen';
 *
 * const roots = [43, 48, 43, 43, 48, 48, 43, 43, 50, 48, 43, 50];
 * const chords = makeLine(
 *   roots.flatMap((root, bar) =>
 *     [0, 12, 16, 19, 22].map((above) => ({ start: bar * 3840, duration: 3840, pitch: root + above })),
 *   ),
 * );
 * const { form, chart } = bandOfLines([chords]);
 * form; // => { form: 'quick-change', name: 'Quick-change twelve-bar', key: 'G' }
 * chart.spans[1]?.chord?.symbol; // => 'C7'
 * bandOfLines([]); // throws LINE_EMPTY
 * ```
 */
export function bandOfLines(lines: readonly Line[], options: BandOptions = {}): BandOfLines {
  const { table, home } = settingOf(requireOptions(options, OPTIONS, 'bandOfLines'));
  const words = { what: 'a list of lines', code: 'LINE_INVALID' } as const;
  requireShape({ lines }, { lines: 'list' }, words);
  const parts = lines.map((line) => requireLine(line)).filter(({ notes }) => notes.length > 0);
  const [first] = parts;
  if (first === undefined)
    throw new ReedplateError({ code: 'LINE_EMPTY', value: lines, expected: 'a part with notes' });
  const other = parts.find(({ metre }) => metre !== first.metre);
  if (other !== undefined)
    throw new ReedplateError({
      code: 'LINE_INVALID',
      value: other.metre,
      expected: `all parts in ${first.metre}`,
    });
  const end = Math.max(...parts.map((part) => lineEnd(part)));
  const bars = Math.ceil(end / parseMetre(first.metre).barTicks);
  if (bars > MOST_BARS)
    throw new ReedplateError({
      code: 'LINE_INVALID',
      value: bars,
      expected: `at most ${MOST_BARS} bars`,
    });
  const chroma = chromaOfNotes(
    parts.flatMap(({ notes }) => notes),
    { end, cell: parseMetre(first.metre).beatTicks / CELLS },
  );
  const readings = readAll(gridsOfLine(first, end), chroma, table, end);
  const answer = answerOf(readings, home);
  if (answer === undefined)
    throw new ReedplateError({ code: 'LINE_EMPTY', value: lines, expected: 'a part with chords' });
  const { grid, played, reading } = answer;
  const at = itemAt(played.bars, 0).at * grid.beatsPerBar;
  return deepFreeze({ ...reading, start: Math.max(0, grid.beats[at] as number) });
}

/** Longest tune that is read. */
const MOST_BARS = 1000;

/** Cells of a beat in which notes are counted. */
const CELLS = 6;

/** What the bar lines as written weigh beside others, as an accent. */
const WRITTEN = 5;

/** Felt beats a minute of lines that say none. */
const ANY_TEMPO = 100;

/** The bars as they are written, and as they would be from each other beat on. */
function gridsOfLine({ metre, pickup }: Line, end: number): readonly RhythmGrid[] {
  const { beatTicks, beatsPerBar, barTicks } = parseMetre(metre);
  return Array.from({ length: beatsPerBar }, (_, phase): RhythmGrid => {
    const offset = (pickup + phase * beatTicks) % barTicks;
    const from = offset === 0 ? 0 : offset - barTicks;
    const bars = Math.ceil((end - from) / barTicks);
    return {
      beatsPerBar,
      beats: Array.from({ length: bars * beatsPerBar + 1 }, (_, at) => from + at * beatTicks),
      tempo: ANY_TEMPO,
      phase,
      onBeats: 0,
      accent: phase === 0 ? WRITTEN : 0,
    };
  });
}
