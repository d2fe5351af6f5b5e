import type { TimedNote } from '@reedplate/line';
import type { WarningList } from '../warning.js';
import { type Bend, type BendBudget, bendsOf, bendsWithin } from './bends.js';
import { curveOfBends, isTooFar } from './curve-of-bends.js';
import { type BentPiece, cutNote, type StruckNote } from './cut-note.js';
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
  readonly budget: BendBudget;
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

function notesOf(
  events: readonly MidiEvent[],
  end: number,
  options: CollectOptions,
  channel: number,
): readonly TimedNote[] {
  const bends = channel === PERCUSSION_CHANNEL ? [] : bendsOf(events);
  return struckNotes(events, end, options.warnings).flatMap((struck) =>
    piecesOf(struck, bends, options).flatMap((piece) => toNote(piece, struck, options)),
  );
}

/** A note with its bends, or the parts that its bends cut it into. */
function piecesOf(
  struck: StruckNote,
  bends: readonly Bend[],
  options: CollectOptions,
): readonly BentPiece[] {
  const within = bends.length === 0 ? [] : bendsWithin(bends, struck, options);
  if (within.length === 0 || !options.bends) return [{ ...struck, bends: within }];
  return cutNote(struck, within, options.scale);
}

function toNote(
  { pitch, from, to, bends }: BentPiece,
  struck: StruckNote,
  { scale, warnings }: CollectOptions,
): readonly TimedNote[] {
  const start = Math.round(from * scale);
  const duration = Math.round(to * scale) - start;
  if (duration <= 0) {
    warnings.add('note-empty');
    return [];
  }
  const stretch = { bends, semitones: struck.pitch - pitch, start, duration, scale };
  if (isTooFar(stretch)) warnings.add('pitch-bend');
  return [{ start, duration, pitch, velocity: struck.velocity, ...curveOfBends(stretch) }];
}

/** A note begun, waiting for its end. */
type Stroke = Pick<StruckNote, 'from' | 'velocity'>;

/** Pairs each note's beginning with its end: of notes that overlap, the first begun ends first. */
function struckNotes(
  events: readonly MidiEvent[],
  end: number,
  warnings: WarningList,
): readonly StruckNote[] {
  const queues = new Map<number, { ended: number; readonly begun: Stroke[] }>();
  const notes: StruckNote[] = [];
  for (const event of events) {
    if (event.kind === 'on') {
      const queue = queues.get(event.pitch) ?? { ended: 0, begun: [] };
      queue.begun.push({ from: event.tick, velocity: event.velocity });
      queues.set(event.pitch, queue);
    } else if (event.kind === 'off') {
      const queue = queues.get(event.pitch);
      const stroke = queue?.begun[queue.ended];
      if (queue === undefined || stroke === undefined) continue;
      queue.ended += 1;
      notes.push({ pitch: event.pitch, ...stroke, to: event.tick });
    }
  }
  for (const [pitch, { begun, ended }] of queues) {
    for (const stroke of begun.slice(ended)) {
      warnings.add('note-open');
      notes.push({ pitch, ...stroke, to: end });
    }
  }
  return notes;
}
