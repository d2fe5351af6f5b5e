import type { TimedNote } from '@reedplate/line';
import { HIGHEST_MIDI } from '@reedplate/pitch';
import type { WarningList } from '../warning.js';
import type { MidiEvent, TrackEvents } from './events.js';

/** The notes of one channel of one track. */
export interface ChannelNotes {
  readonly track: number;
  readonly channel: number;
  readonly name: string;
  /** Counted from 1. */
  readonly program?: number;
  readonly notes: readonly TimedNote[];
}

/** Channel 10, counted from 0, plays percussion in General MIDI. */
export const PERCUSSION_CHANNEL = 9;
const CHANNELS = 16;

/** How {@link collectNotes} counts. */
export interface CollectOptions {
  /** Ticks of ours in one of the file's. */
  readonly scale: number;
  /** Whether bends change pitches. */
  readonly bends: boolean;
  readonly warnings: WarningList;
}

/** The notes of a track, channel by channel, those without notes left out. */
export function collectNotes(
  { events, end }: TrackEvents,
  track: number,
  options: CollectOptions,
): readonly ChannelNotes[] {
  const name = events.find(({ kind }) => kind === 'name');
  const all = Array.from({ length: CHANNELS }, (_, channel): ChannelNotes => {
    const own = events.filter((event) => 'channel' in event && event.channel === channel);
    const program = own.find(({ kind }) => kind === 'program');
    return {
      track,
      channel,
      name: name?.kind === 'name' ? name.text : '',
      ...(program?.kind === 'program' ? { program: program.program } : {}),
      notes: notesOf(own, end, options, channel),
    };
  });
  return all.filter(({ notes }) => notes.length > 0);
}

/** A bend that sounds from a tick on, in semitones. */
interface Bend {
  readonly tick: number;
  readonly semitones: number;
}

function notesOf(
  events: readonly MidiEvent[],
  end: number,
  { scale, bends, warnings }: CollectOptions,
  channel: number,
): readonly TimedNote[] {
  const notes: TimedNote[] = [];
  const curve = bends && channel !== PERCUSSION_CHANNEL ? bendsOf(events) : [];
  for (const sounded of soundedNotes(events, end, warnings)) {
    for (const { pitch, from, to } of bentPieces(sounded, curve, { scale, warnings })) {
      const start = Math.round(from * scale);
      const duration = Math.round(to * scale) - start;
      if (duration > 0) notes.push({ start, duration, pitch });
      else warnings.add('note-empty');
    }
  }
  return notes;
}

/** A note in the file's ticks. */
interface SoundedNote {
  readonly pitch: number;
  readonly from: number;
  readonly to: number;
}

/** Pairs each note's beginning with its end: of notes that overlap, the first begun ends first. */
function soundedNotes(
  events: readonly MidiEvent[],
  end: number,
  warnings: WarningList,
): readonly SoundedNote[] {
  const queues = new Map<number, { ended: number; readonly begun: number[] }>();
  const notes: SoundedNote[] = [];
  for (const event of events) {
    if (event.kind === 'on') {
      const queue = queues.get(event.pitch) ?? { ended: 0, begun: [] };
      queue.begun.push(event.tick);
      queues.set(event.pitch, queue);
    } else if (event.kind === 'off') {
      const queue = queues.get(event.pitch);
      const from = queue?.begun[queue.ended];
      if (queue === undefined || from === undefined) continue;
      queue.ended += 1;
      notes.push({ pitch: event.pitch, from, to: event.tick });
    }
  }
  for (const [pitch, { begun, ended }] of queues) {
    for (const from of begun.slice(ended)) {
      warnings.add('note-open');
      notes.push({ pitch, from, to: end });
    }
  }
  return notes;
}

/** Range of a bend wheel, in semitones, where the file sets none: General MIDI. */
const USUAL_BEND_RANGE = 2;

function bendsOf(events: readonly MidiEvent[]): readonly Bend[] {
  const curve: Bend[] = [];
  let range = USUAL_BEND_RANGE;
  let amount = 0;
  for (const event of events) {
    if (event.kind === 'bend-range') range = event.semitones;
    else if (event.kind === 'bend') amount = event.amount;
    else continue;
    const semitones = amount * range;
    // A wheel that has not left its rest bends nothing.
    if (semitones !== (curve.at(-1)?.semitones ?? 0)) curve.push({ tick: event.tick, semitones });
  }
  return curve;
}

/** A bend held for less than this (a sixteenth of a quarter note) is on its way to another. */
const SHORTEST_BEND = 60;
/** Parts of a semitone within which a bend is taken to be on the grid. */
const IN_TUNE = 0.05;

/** Bends read within one note; a note bent more often is damage, and its other bends are left out. */
const MOST_BENDS = 10_000;

/** A note cut where its bend passes from one semitone to the next. */
function bentPieces(
  { pitch, from, to }: SoundedNote,
  curve: readonly Bend[],
  { scale, warnings }: Pick<CollectOptions, 'scale' | 'warnings'>,
): readonly SoundedNote[] {
  if (curve.length === 0) return [{ pitch, from, to }];
  const bends = bendsWithin(curve, from, to);
  if (bends.some(({ semitones }) => Math.abs(semitones - Math.round(semitones)) > IN_TUNE)) {
    warnings.add('pitch-bend');
  }
  const pieces: SoundedNote[] = [];
  for (const [at, { tick, semitones }] of bends.entries()) {
    const end = bends[at + 1]?.tick ?? to;
    const bent = Math.min(HIGHEST_MIDI, Math.max(0, pitch + Math.round(semitones)));
    const last = pieces.at(-1);
    const isGlide = (end - tick) * scale < SHORTEST_BEND && at < bends.length - 1;
    if (last === undefined) {
      if (!isGlide) pieces.push({ pitch: bent, from, to: end });
    } else if (last.pitch === bent || isGlide) {
      pieces[pieces.length - 1] = { ...last, to: end };
    } else {
      pieces.push({ pitch: bent, from: tick, to: end });
    }
  }
  return pieces;
}

/** The bend that sounds when a note begins, and those that come while it sounds. */
function bendsWithin(curve: readonly Bend[], from: number, to: number): readonly Bend[] {
  const before = lastBefore(curve, from);
  const bends: Bend[] = [{ tick: from, semitones: curve[before]?.semitones ?? 0 }];
  for (let at = before + 1; at < curve.length && bends.length < MOST_BENDS; at += 1) {
    const bend = curve[at] as Bend;
    if (bend.tick >= to) break;
    bends.push(bend);
  }
  return bends;
}

/** Index of the last bend at or before a tick, −1 where none is; by halving. */
function lastBefore(curve: readonly Bend[], tick: number): number {
  let low = 0;
  let high = curve.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((curve[middle]?.tick ?? Number.POSITIVE_INFINITY) <= tick) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
