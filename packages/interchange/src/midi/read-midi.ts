import { type Feel, toFeel } from '@reedplate/form';
import { makeLine, parseMetre } from '@reedplate/line';
import { deepFreeze, type OptionNames, requireOptions } from '@reedplate/pitch';
import { choosePart, warnOfChoice } from '../choose-part.js';
import type { FileInput } from '../file-bytes.js';
import { chartOfMarks } from '../notation/chart-of-marks.js';
import type { ChordMark } from '../notation/lay-measures.js';
import type { Piece, PiecePart } from '../piece.js';
import { removeSwing } from '../swing.js';
import { makeWarningList } from '../warning.js';
import { MOST_BENDS } from './bends.js';
import { readChunks } from './chunks.js';
import { type ChannelNotes, collectNotes, PERCUSSION_CHANNEL } from './collect-notes.js';
import { barsOfMarker } from './count-in-marker.js';
import { type MidiEvent, readTracks } from './events.js';
import { findMelody } from './find-melody.js';
import { type MidiHead, readHead } from './read-head.js';
import { usualVelocity, withoutUsualVelocity } from './velocity.js';

/** How MIDI files are read. */
export interface ReadMidiOptions {
  /** The part that is the line: its number among those with notes, from 1, or its name; default the one most like a melody. */
  readonly part?: number | string;
  /**
   * Whether a pitch bend changes the pitch of its note, to the nearest semitone and cutting the note
   * where it passes to the next; default true. False reads the notes as struck. What lies between the
   * pitch that is read and what sounds is in the `cents` or the `curve` of each note, either way.
   */
  readonly bends?: boolean;
  /** Feel that was played, to be taken off; default straight: notes stay where they were played. */
  readonly feel?: Feel | 'slow';
}

const READ_MIDI_OPTIONS: OptionNames<ReadMidiOptions> = { part: true, bends: true, feel: true };

/**
 * Reads a Standard MIDI File of any format: one part for each channel of each track, percussion
 * marked as such. A short first bar of another metre is read as a pickup, and markers that are all
 * chord symbols as the chart; one that says `Count-in` at the beginning gives the bars counted in.
 * Velocities, bends and tempo changes are kept. A metre that changes later is a warning, as is a track
 * that is damaged: it is kept as far as it could be read.
 *
 * @throws ReedplateError `MIDI_MALFORMED` for what is no MIDI file, `FILE_TOO_LARGE` above 16 MB or
 * 500,000 events, `OPTION_UNKNOWN` for a part that is not there
 * @example
 * ```ts
 * import { makeLine, parseMetre } from '@reedplate/line';
 * import { readMidi, writeMidi } from '@reedplate/interchange';
 *
 * const line = makeLine([{ start: 0, duration: 960, pitch: 67 }], { tempo: 96 });
 * readMidi(writeMidi({ line })).line; // => { metre: '4/4', pickup: 0, tempo: 96, notes: [{ start: 0, duration: 960, pitch: 67 }] }
 * readMidi(new Uint8Array(3)); // throws MIDI_MALFORMED
 * ```
 */
export function readMidi(input: Exclude<FileInput, string>, options: ReadMidiOptions = {}): Piece {
  const { bends = true } = requireOptions(options, READ_MIDI_OPTIONS, 'readMidi');
  const feel = toFeel(options.feel ?? 'straight');
  const warnings = makeWarningList();
  const { tracks, ticksPerFileTick: scale } = readChunks(input, warnings);
  const read = readTracks(tracks);
  for (const { damagedAt } of read) {
    if (damagedAt !== undefined) warnings.add('data-malformed', { index: damagedAt });
  }
  const events = read.flatMap((track) => track.events).sort((a, b) => a.tick - b.tick);
  const head = readHead(events, scale, warnings);
  const title = titleOf(read[0]?.events ?? [], tracks.length);
  const lineOptions = { ...withoutKey(head), ...(title === undefined ? {} : { title }) };
  const budget = { left: MOST_BENDS };
  const parts = read
    .flatMap((track, index) => collectNotes(track, index, { scale, bends, budget, warnings }))
    .map((notes) => toPart(notes, lineOptions))
    .map((part) => ({ ...part, line: removeSwing(part.line, { feel }) }));
  if (parts.length === 0) warnings.add('notes-missing');
  // Bar 1 of the chart is bar 1 of the line: the count-in is before it.
  const counted = (head.countIn ?? 0) * parseMetre(head.metre).barTicks;
  const chart = chartOfMarks(
    chordMarkers(events, scale).map((mark) => ({ ...mark, start: mark.start - counted })),
    {
      ...head,
      form: 'lead-sheet',
      feel,
      key: head.key ?? 'C',
      end: Math.round(Math.max(...read.map(({ end }) => end)) * scale) - counted,
    },
    warnings,
  );
  const chosen = choosePart(parts, options.part, findMelody);
  warnOfChoice(chosen, warnings);
  return deepFreeze({
    line: chosen?.part.line ?? makeLine([], lineOptions),
    ...(chosen === undefined ? {} : { choice: chosen.choice }),
    ...(head.key === undefined ? {} : { key: head.key }),
    ...(chart === undefined ? {} : { chart }),
    parts,
    warnings: warnings.all(),
  });
}

function withoutKey({ key: _, ...head }: MidiHead): Omit<MidiHead, 'key'> {
  return head;
}

/** The name of the first of several tracks is that of the piece. */
function titleOf(events: readonly MidiEvent[], tracks: number): string | undefined {
  const name = events.find(({ kind }) => kind === 'name');
  const hasNotes = events.some(({ kind }) => kind === 'on');
  return name?.kind === 'name' && name.text !== '' && tracks > 1 && !hasNotes
    ? name.text
    : undefined;
}

function toPart({ name, program, channel, notes }: ChannelNotes, options: object): PiecePart {
  const isPercussion = channel === PERCUSSION_CHANNEL;
  const head = {
    name,
    ...(program === undefined || isPercussion ? {} : { program }),
    ...(isPercussion ? { percussion: true as const } : {}),
  };
  return { ...head, line: makeLine(withoutUsualVelocity(notes, usualVelocity(head)), options) };
}

const CHORD_MARKER = /^(?:[A-G](?:##?|bb?)?\S{0,20}|N\.?C\.?)$/u;
const LETTER = /^[A-G]$/u;

/**
 * Markers are chords where all of them look it and one is more than a letter: letters alone mark
 * the sections of a tune.
 */
function chordMarkers(events: readonly MidiEvent[], scale: number): readonly ChordMark[] {
  const marks = events.flatMap((event): readonly ChordMark[] =>
    event.kind === 'marker' && barsOfMarker(event.text) === undefined
      ? [{ start: Math.round(event.tick * scale), text: event.text }]
      : [],
  );
  const areChords = marks.every(({ text }) => CHORD_MARKER.test(text));
  return areChords && marks.some(({ text }) => !LETTER.test(text)) ? marks : [];
}
