import { type Chart, chartEnd, chordChanges, type Feel } from '@reedplate/form';
import {
  type Line,
  type Metre,
  parseMetre,
  type TempoChange,
  TICKS_PER_QUARTER,
  tickAt,
} from '@reedplate/line';
import {
  type Chord,
  type KeyName,
  type OptionNames,
  requireOptions,
  toKey,
} from '@reedplate/pitch';
import { writeMidi as writeBytes } from 'midi-file';
import type { FileBytes } from '../file-bytes.js';
import type { PiecePart, Sheet } from '../piece.js';
import { requireSheet } from '../require-sheet.js';
import { applySwing } from '../swing.js';
import { countInMarker } from './count-in-marker.js';
import { HARMONICA_PROGRAM } from './melody-clues.js';
import { signatureOfKey } from './read-head.js';
import { eventAt, type TimedEvent, textAt, toTrack } from './track.js';
import { usualVelocity } from './velocity.js';
import { bendEvents } from './write-bends.js';

/** How MIDI files are written. */
export interface WriteMidiOptions {
  /** Feel that is played; default that of the chart, and straight without one. */
  readonly feel?: Feel | 'slow';
  /**
   * Length of the first eighth of a swung beat to the second, above 0 and at most 4; default 2. A part that has a
   * swing of its own keeps it.
   */
  readonly ratio?: number;
  /** General MIDI program of the line, counted from 1; default 23, the harmonica. */
  readonly program?: number;
}

/** Beats a minute where nothing says how fast. */
const USUAL_TEMPO = 96;

const WRITE_MIDI_OPTIONS: OptionNames<WriteMidiOptions> = {
  feel: true,
  ratio: true,
  program: true,
};

/**
 * Writes a Standard MIDI File of format 1, 960 ticks to the quarter: a first track with title,
 * metre, tempo, key and a marker for each chord change; then the line and every other part, each on
 * a track and channel of its own, percussion on channel 10. A pickup is a short first bar, a count-in a
 * marker. Cents and curves are bends of the wheel, whose range is set by registered parameter 0; of
 * notes that overlap, the last one begun has the wheel. A note without a velocity gets 96 in the part of
 * a harmonica and 72 in others. Notes of one pitch that overlap in one part come back paired as MIDI pairs them, the first begun with the
 * first end.
 *
 * @throws ReedplateError `NUMBER_RANGE` for a wrong ratio
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { writeMidi } from '@reedplate/interchange';
 *
 * const line = makeLine([{ start: 0, duration: 960, pitch: 67 }]);
 * String.fromCharCode(...writeMidi({ line }).subarray(0, 4)); // => 'MThd'
 * ```
 */
export function writeMidi(sheet: Sheet, options: WriteMidiOptions = {}): FileBytes {
  requireOptions(options, WRITE_MIDI_OPTIONS, 'writeMidi');
  requireSheet(sheet);
  const { feel = sheet.chart?.feel ?? 'straight', ratio } = options;
  const played = ({ line, swing = ratio }: PiecePart): Line =>
    applySwing(line, { feel, ...(swing === undefined ? {} : { ratio: swing }) });
  const parts = partsOf(sheet, options.program ?? HARMONICA_PROGRAM);
  const tracks = [
    toTrack(conductorEvents(sheet), endOf(sheet)),
    ...parts.map((part, at) => toTrack(partEvents(part, played(part), channelOf(parts, at)))),
  ];
  const header = { format: 1, numTracks: tracks.length, ticksPerBeat: 960 } as const;
  return Uint8Array.from(writeBytes({ header, tracks }));
}

/** The line as a part, unless it is one already or holds nothing; parts as they are. */
export function partsOf({ line, parts = [] }: Sheet, program: number): readonly PiecePart[] {
  const isBare = line.notes.length === 0 && parts.length > 0;
  const isPart = isBare || parts.some((part) => sameNotes(part.line, line));
  return isPart ? parts : [{ name: line.title ?? '', program, line }, ...parts];
}

function sameNotes(a: Line, b: Line): boolean {
  return a === b || JSON.stringify(a.notes) === JSON.stringify(b.notes);
}

const PERCUSSION_CHANNEL = 9;
const PITCHED_CHANNELS = 15;

/** Channels in the order of parts, over again after fifteen; channel 10 is for percussion. */
function channelOf(parts: readonly PiecePart[], at: number): number {
  if (parts[at]?.percussion === true) return PERCUSSION_CHANNEL;
  const before = parts.slice(0, at).filter(({ percussion }) => percussion !== true).length;
  const channel = before % PITCHED_CHANNELS;
  return channel < PERCUSSION_CHANNEL ? channel : channel + 1;
}

/** The chart may go on after the last note. */
function endOf({ line, chart }: Sheet): number {
  return chart === undefined ? 0 : barOneOf(line) + chartEnd(chart) - chart.pickup;
}

function barOneOf(line: Line): number {
  return tickAt({ bar: 1, beat: 1 }, line);
}

function conductorEvents({ line, key, chart }: Sheet): readonly TimedEvent[] {
  const { title, metre } = line;
  const tempo = line.tempo ?? chart?.tempo ?? USUAL_TEMPO;
  const name = key ?? chart?.key;
  return [
    ...(title === undefined ? [] : [textAt(0, 'trackName', title)]),
    ...metreEvents(line),
    ...(line.countIn === undefined ? [] : [textAt(0, 'marker', countInMarker(line.countIn))]),
    ...[{ start: 0, tempo }, ...(line.tempoChanges ?? [])].map((change) =>
      tempoEvent(change, metre),
    ),
    ...(name === undefined ? [] : [keyEvent(name)]),
    ...(chart === undefined ? [] : chordMarkers(chart, barOneOf(line))),
  ];
}

/** A pickup is a bar of its own, as long as it is or up to a 64th longer. */
function metreEvents({ metre, pickup }: Line): readonly TimedEvent[] {
  const { numerator, denominator } = parseMetre(metre);
  const whole = metreEvent(pickup, numerator, denominator);
  if (pickup === 0) return [whole];
  const unit = METRE_UNITS.find((each) => (pickup * each) % WHOLE_TICKS === 0) ?? 64;
  return [metreEvent(0, Math.ceil((pickup * unit) / WHOLE_TICKS), unit), whole];
}

const WHOLE_TICKS = 4 * TICKS_PER_QUARTER;
const METRE_UNITS = [1, 2, 4, 8, 16, 32, 64] as const;

function metreEvent(tick: number, numerator: number, denominator: number): TimedEvent {
  const clocks = { metronome: 24, thirtyseconds: 8 };
  return eventAt(tick, { type: 'timeSignature', numerator, denominator, ...clocks });
}

const SLOWEST_TEMPO = 2 ** 24 - 1;

function tempoEvent({ start, tempo }: TempoChange, metre: Metre): TimedEvent {
  const quarters = (tempo * parseMetre(metre).beatTicks) / TICKS_PER_QUARTER;
  const microsecondsPerBeat = Math.min(SLOWEST_TEMPO, Math.round(60_000_000 / quarters));
  return eventAt(start, { type: 'setTempo', microsecondsPerBeat });
}

function keyEvent(name: KeyName): TimedEvent {
  const scale = toKey(name).mode === 'minor' ? 1 : 0;
  return eventAt(0, { type: 'keySignature', key: signatureOfKey(name), scale });
}

/** A marker where each chord comes; bar 1 of the chart is bar 1 of the line. */
function chordMarkers(chart: Chart, barOne: number): readonly TimedEvent[] {
  return chordChanges(chart).map(({ start, chord }) =>
    textAt(start - chart.pickup + barOne, 'marker', markerOf(chord)),
  );
}

/** A lone letter would read as a section of the tune. */
function markerOf(chord: Chord | null): string {
  if (chord === null) return 'N.C.';
  return chord.symbol.length === 1 ? `${chord.symbol}maj` : chord.symbol;
}

function partEvents(part: PiecePart, { notes }: Line, channel: number): readonly TimedEvent[] {
  const { name, program, percussion } = part;
  const usual = usualVelocity(part);
  return [
    ...(name === '' ? [] : [textAt(0, 'trackName', name)]),
    ...(program === undefined
      ? []
      : [eventAt(0, { type: 'programChange', channel, programNumber: program - 1 })]),
    ...(percussion === true ? [] : bendEvents(notes, channel)),
    ...notes.flatMap(({ start, duration, pitch: noteNumber, velocity = usual }) => [
      eventAt(start, { type: 'noteOn', channel, noteNumber, velocity }),
      eventAt(start + duration, { type: 'noteOff', channel, noteNumber, velocity: 0 }),
    ]),
  ];
}
