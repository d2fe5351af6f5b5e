import type { HarpLike, KnownTunings, PlayerLike } from '@reedplate/layout';
import type { Line, TimedNote } from '@reedplate/line';
import { noteNameWithOctave, type OptionNames, requireOptions } from '@reedplate/pitch';
import { isBent } from '../midi/write-bends.js';
import type { Sheet } from '../piece.js';
import { requireSheet } from '../require-sheet.js';
import { eventsApart } from '../tab/choose-soundings.js';
import { makeWarningList, type PieceWarning, type PieceWarningCode } from '../warning.js';
import { type PieceFormatId, requireFormat } from './formats.js';

/** What {@link unsupportedIn} looks at besides the sheet. */
export interface LossesOptions {
  /** The harp that tab is written for: notes struck together that it cannot sound together are said too. */
  readonly harp?: HarpLike;
  /** Who plays, by a level or as a `Player`; default `bends`. */
  readonly level?: PlayerLike;
  /** Tunings of one's own, for a harp that is named in one. */
  readonly known?: KnownTunings;
}

const LOSSES_OPTIONS: OptionNames<LossesOptions> = { harp: true, level: true, known: true };

/**
 * What of a sheet a format does not hold, and what of its tab no one can play, as data; empty where
 * nothing is lost on writing.
 *
 * @throws ReedplateError `FORMAT_UNKNOWN`
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { unsupportedIn } from '@reedplate/interchange';
 *
 * const line = makeLine([{ start: 0, duration: 960, pitch: 67 }], { title: 'Riff' });
 * unsupportedIn({ line, key: 'G' }, 'midi'); // => []
 * unsupportedIn({ line, key: 'G' }, 'line')[0]?.value; // => 'key'
 * ```
 */
export function unsupportedIn(
  sheet: Sheet,
  format: PieceFormatId,
  options: LossesOptions = {},
): readonly PieceWarning[] {
  const { harp, ...which } = requireOptions(options, LOSSES_OPTIONS, 'unsupportedIn');
  requireSheet(sheet);
  const losses = makeWarningList();
  const id = requireFormat(format);
  if (harp !== undefined && HAS_TAB.has(id)) {
    for (const { bar, pitches } of eventsApart(sheet.line, harp, which)) {
      losses.add('notes-apart', { bar }, namesOf(pitches, sheet));
    }
  }
  for (const [code, lost] of LOSSES[id](sheet)) {
    for (const _ of lost) losses.add(code, {}, lost.join(', '));
  }
  return losses.all();
}

const HAS_TAB: ReadonlySet<PieceFormatId> = new Set(['musicxml', 'abc', 'tab']);

function namesOf(pitches: readonly number[], { key }: Sheet): string {
  const spelled = key === undefined ? {} : { key };
  return pitches.map((pitch) => noteNameWithOctave(pitch, spelled)).join(' ');
}

/** Names of what is lost, by what it is lost for; an empty list loses nothing. */
type Losses = readonly (readonly [PieceWarningCode, readonly string[]])[];

const LOSSES: Readonly<Record<PieceFormatId, (sheet: Sheet) => Losses>> = {
  midi: (sheet) => [
    ['playing-unwritten', [...playingOf(sheet, MIDI_HOLDS), ...wheelOf(sheet), ...doubleOf(sheet)]],
  ],
  musicxml: (sheet) => [
    ['percussion-unwritten', percussionOf(sheet)],
    ['playing-unwritten', [...playingOf(sheet, MUSICXML_HOLDS), ...doubleOf(sheet)]],
  ],
  abc: (sheet) => [
    ['percussion-unwritten', percussionOf(sheet)],
    ['playing-unwritten', playingOf(sheet, ABC_HOLDS)],
  ],
  line: (sheet) => [...unsupportedOfOneLine(sheet), ['head-unwritten', named({ key: sheet.key })]],
  tab: (sheet) => [
    ['parts-unwritten', otherPartsOf(sheet)],
    ['head-unwritten', named({ tempoChanges: sheet.line.tempoChanges })],
    ['playing-unwritten', playingOf({ line: sheet.line }, [])],
  ],
};

/** What notes can say besides when and which they are. */
const PLAYING = ['velocity', 'accent', 'grace', 'cents', 'curve', 'confidence'] as const;
type Playing = (typeof PLAYING)[number];

const MIDI_HOLDS: readonly Playing[] = ['velocity', 'cents', 'curve'];
const MUSICXML_HOLDS: readonly Playing[] = ['velocity', 'accent', 'grace', 'cents', 'curve'];
const ABC_HOLDS: readonly Playing[] = ['accent', 'grace'];

/** What a note of the sheet says that the format does not hold. */
function playingOf(sheet: Sheet, held: readonly Playing[]): readonly string[] {
  const lines = linesOf(sheet);
  return PLAYING.filter(
    (name) =>
      !held.includes(name) &&
      lines.some(({ notes }) => notes.some((note) => note[name] !== undefined)),
  );
}

function linesOf({ line, parts = [] }: Sheet): readonly Line[] {
  return [line, ...parts.map((part) => part.line)];
}

/** A channel has one wheel: notes that sound together cannot be bent apart. */
function wheelOf(sheet: Sheet): readonly string[] {
  const isApart = linesOf(sheet).some(({ notes }) => hasBendsTogether(notes));
  return isApart ? ['bends of notes that sound together'] : [];
}

/** What bends a note says all: its cents as a whole are lost beside a curve. */
function doubleOf(sheet: Sheet): readonly string[] {
  const isDouble = linesOf(sheet).some(({ notes }) =>
    notes.some(({ cents, curve }) => cents !== undefined && curve !== undefined),
  );
  return isDouble ? ['cents beside a curve'] : [];
}

function hasBendsTogether(notes: readonly TimedNote[]): boolean {
  let end = 0;
  let isBentBefore = false;
  return notes.some((note) => {
    const bent = isBent(note);
    const isTogether = note.start < end && (bent || isBentBefore);
    isBentBefore = note.start < end ? isBentBefore || bent : bent;
    end = Math.max(end, note.start + note.duration);
    return isTogether;
  });
}

function percussionOf({ parts = [] }: Sheet): readonly string[] {
  return parts.filter(({ percussion }) => percussion === true).map(({ name }) => name);
}

function unsupportedOfOneLine(sheet: Sheet): Losses {
  const { chart } = sheet;
  return [
    ['chart-unwritten', chart === undefined ? [] : [chart.form]],
    ['parts-unwritten', otherPartsOf(sheet)],
  ];
}

function otherPartsOf({ line, parts = [] }: Sheet): readonly string[] {
  const others = parts.filter((part) => part.line !== line);
  return others.map(({ name }, at) => name || `part ${at + 1}`);
}

function named(fields: Readonly<Record<string, unknown>>): readonly string[] {
  return Object.entries(fields)
    .filter(([, value]) => value !== undefined)
    .map(([name]) => name);
}
