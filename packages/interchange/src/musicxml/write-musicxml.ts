import { parseMetre, TICKS_PER_QUARTER } from '@reedplate/line';
import { type KeyName, type OptionNames, requireOptions, toKey } from '@reedplate/pitch';
import { HARMONICA_PROGRAM } from '../midi/melody-clues.js';
import { signatureOfKey } from '../midi/read-head.js';
import { partsOf } from '../midi/write-midi.js';
import type { AlteredPlaces } from '../notation/accidentals.js';
import { endsSection, startsSystem } from '../notation/bar-places.js';
import { foldRepeats } from '../notation/fold-repeats.js';
import { titled } from '../notation/titled.js';
import { type BarTempo, type WrittenBar, writeBars } from '../notation/write-bars.js';
import type { PiecePart, Sheet } from '../piece.js';
import { requireSheet } from '../require-sheet.js';
import { isSwung } from '../swing.js';
import { spellBar } from './spell-bar.js';
import { writeCredits } from './write-credits.js';
import { writeOpening } from './write-direction.js';
import { writeHarmony } from './write-harmony.js';
import { element } from './xml-text.js';

/** How scores are written. */
export interface WriteNotationOptions {
  /** What stands under the notes, one for each time that notes begin: tab, say. Default none. */
  readonly words?: readonly string[];
  /** Whether choruses that are all alike are written once, with repeat signs; default true. */
  readonly repeats?: boolean;
  /** Title; default that of the line. */
  readonly title?: string;
  /** What stands below the title: the harp and its position, say. */
  readonly subtitle?: string;
}

/** The names of the options of writing notation. */
export const WRITE_NOTATION_OPTIONS: OptionNames<WriteNotationOptions> = {
  words: true,
  repeats: true,
  title: true,
  subtitle: true,
};

/**
 * Writes a partwise MusicXML 4.0 score: the line as a lead sheet with the chart's chord symbols,
 * each other pitched part below, words as lyrics, short notes beamed by the beat. Times are exact, 960 divisions to the quarter; a
 * length that no note values make is written without one.
 *
 * @throws ReedplateError `PITCH_RANGE` for a note below C0, which the format does not have;
 * `LINE_INVALID` for a line of more than 20,000 bars
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { writeMusicXml } from '@reedplate/interchange';
 *
 * const line = makeLine([{ start: 0, duration: 3840, pitch: 67 }]);
 * writeMusicXml({ line }, { words: ['-2'] }).includes('<text>-2</text>'); // => true
 * ```
 */
export function writeMusicXml(untitled: Sheet, options: WriteNotationOptions = {}): string {
  requireOptions(options, WRITE_NOTATION_OPTIONS, 'writeMusicXml');
  const sheet = titled(requireSheet(untitled), options.title);
  const parts = partsOf(sheet, HARMONICA_PROGRAM).filter(({ percussion }) => percussion !== true);
  const { title } = sheet.line;
  const score = element(
    'score-partwise',
    [
      ...(title === undefined ? [] : [element('work', [element('work-title', title)])]),
      element('identification', [
        element('creator', '', { type: 'composer' }),
        element('encoding', [element('software', 'Reedplate')]),
        ...writeCountIn(sheet.line),
      ]),
      ...writeCredits(title, options.subtitle),
      element('part-list', parts.map(writeScorePart)),
      ...parts.map((part, at) => writePart(part, at, sheet, options)),
    ],
    { version: '4.0' },
  );
  return `${HEAD}\n${score}\n`;
}

/** The field of `<miscellaneous>` that says how many bars are counted in. */
export const COUNT_IN_FIELD = 'count-in';

function writeCountIn({ countIn }: Sheet['line']): readonly string[] {
  if (countIn === undefined) return [];
  const field = element('miscellaneous-field', `${countIn}`, { name: COUNT_IN_FIELD });
  return [element('miscellaneous', [field])];
}

const HEAD = `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">`;

function writeScorePart(
  { name, program }: PiecePart,
  at: number,
  { length }: readonly PiecePart[],
): string {
  const id = `P${at + 1}`;
  const instrument = `${id}-I1`;
  const isHarmonica = program === HARMONICA_PROGRAM;
  const sound = isHarmonica ? [element('instrument-sound', 'wind.reed.harmonica')] : [];
  const midi = program === undefined ? [] : [element('midi-program', `${program}`)];
  const named = element('instrument-name', isHarmonica ? 'Harmonica' : name || 'Part');
  return element(
    'score-part',
    [
      // The name of the only part is the title again: before the staff it would take the music's room.
      element(
        'part-name',
        name || (isHarmonica ? 'Harmonica' : 'Part'),
        length === 1 ? { 'print-object': 'no' } : {},
      ),
      element('score-instrument', [named, ...sound], { id: instrument }),
      ...(midi.length === 0 ? [] : [element('midi-instrument', midi, { id: instrument })]),
    ],
    { id },
  );
}

function writePart(
  { line }: PiecePart,
  at: number,
  sheet: Sheet,
  { words, repeats = true }: WriteNotationOptions,
): string {
  const { chart } = sheet;
  const key = sheet.key ?? chart?.key ?? 'C';
  // Chord symbols and words belong to the first part; all parts have the same bars.
  const isFirst = at === 0;
  const bars = writeBars(line, chart, isFirst ? words : undefined);
  const folded = repeats ? foldRepeats(bars, chart?.choruses ?? 1) : bars;
  const { beatTicks } = parseMetre(line.metre);
  let altered: AlteredPlaces = new Set();
  const measures = folded.map((bar, index) => {
    const own = isFirst ? bar : { ...bar, chords: [], tempos: [] };
    const voices = spellBar(own, { key, beatTicks }, altered);
    altered = voices.altered;
    return writeMeasure(own, voices.notes, {
      beatTicks,
      head: index === 0 ? headOf(sheet, key, isFirst) : [],
      style: barStyle(own, index === folded.length - 1, chart),
    });
  });
  return element('part', measures, { id: `P${at + 1}` });
}

/** What stands before the first note: key, metre, clef, tempo and swing. */
function headOf({ line, chart }: Sheet, key: KeyName, isFirst: boolean): readonly string[] {
  const { numerator, denominator, beatTicks } = parseMetre(line.metre);
  const attributes = element('attributes', [
    element('divisions', `${TICKS_PER_QUARTER}`),
    element('key', [element('fifths', `${signatureOfKey(key)}`), element('mode', toKey(key).mode)]),
    element('time', [element('beats', `${numerator}`), element('beat-type', `${denominator}`)]),
    element('clef', [element('sign', 'G'), element('line', '2')]),
  ]);
  const tempo = line.tempo ?? chart?.tempo;
  const quarters = tempo && (tempo * beatTicks) / TICKS_PER_QUARTER;
  const swing = chart !== undefined && isSwung(line.metre, chart.feel) ? [SWING] : [];
  const hasSound = isFirst && (quarters !== undefined || swing.length > 0);
  const sound = quarters === undefined ? {} : { tempo: quarters };
  const opening = isFirst ? writeOpening({ feel: chart?.feel, tempo, beatTicks }) : [];
  return [attributes, ...opening, ...(hasSound ? [element('sound', swing, sound)] : [])];
}

const SWING = /* @__PURE__ */ element('swing', [
  element('first', '2'),
  element('second', '1'),
  element('swing-type', 'eighth'),
]);

/** How a measure is written besides its notes. */
interface MeasureLook {
  readonly beatTicks: number;
  readonly head: readonly string[];
  /** How its bar line is drawn, where it is no plain one. */
  readonly style: string | undefined;
}

function writeMeasure(
  bar: WrittenBar,
  voices: readonly (readonly string[])[],
  { beatTicks, head, style }: MeasureLook,
): string {
  const backup = element('backup', [element('duration', `${bar.length}`)]);
  const implicit = bar.number < 1 ? { implicit: 'yes' } : {};
  return element(
    'measure',
    [
      ...(startsSystem(bar) ? [element('print', '', { 'new-system': 'yes' })] : []),
      ...(bar.opens ? [writeRepeat('left', { direction: 'forward' })] : []),
      ...head,
      ...bar.tempos.map((change) => writeTempo(change, beatTicks)),
      ...bar.chords.map(({ chord, offset }) => writeHarmony(chord, offset)),
      ...voices.flatMap((notes, at) => (at === 0 ? notes : [backup, ...notes])),
      ...(bar.closes > 0
        ? [writeRepeat('right', { direction: 'backward', ...timesOf(bar.closes) })]
        : []),
      ...(style === undefined || bar.closes > 0
        ? []
        : [element('barline', [element('bar-style', style)], { location: 'right' })]),
    ],
    { number: bar.number, ...implicit },
  );
}

/** A final bar line at the end, a double one where an introduction or a chorus ends. */
function barStyle(bar: WrittenBar, isLast: boolean, chart: Sheet['chart']): string | undefined {
  if (isLast) return 'light-heavy';
  return endsSection(bar, chart) ? 'light-light' : undefined;
}

function writeTempo({ offset, tempo }: BarTempo, beatTicks: number): string {
  const quarters = (tempo * beatTicks) / TICKS_PER_QUARTER;
  const placed = offset === 0 ? [] : [element('offset', `${offset}`)];
  return element('sound', placed, { tempo: quarters });
}

/** Twice is what a repeat means without a number. */
function timesOf(closes: number): Readonly<Record<string, number>> {
  return closes === 2 ? {} : { times: closes };
}

function writeRepeat(
  location: 'left' | 'right',
  attributes: Readonly<Record<string, string | number>>,
): string {
  const style = location === 'left' ? 'heavy-light' : 'light-heavy';
  const repeat = element('repeat', '', attributes);
  return element('barline', [element('bar-style', style), repeat], { location });
}
