import type { TimedNote } from '@reedplate/line';
import type { Chord } from '@reedplate/pitch';
import { graceTargets } from '../grace-notes.js';
import { requireVoices } from './bar-limits.js';
import type { GraceNote, PlayedAs } from './measure.js';
import { playedOf } from './played.js';

/** What stands at the beginning of notes, and not where they go on after a tie. */
export interface Attack {
  /** What stands under the notes. */
  readonly word?: string;
  /** How each of them is played, in the order of their pitches. */
  readonly played?: readonly PlayedAs[];
  /** Grace notes before them: one after another, some of them together. */
  readonly graces?: readonly (readonly GraceNote[])[];
}

/** Notes that begin and end together, anywhere in a line. */
export interface LineEvent extends Attack {
  readonly start: number;
  readonly end: number;
  readonly pitches: readonly number[];
  /** The chord that they begin over, which spells them. */
  readonly chord?: Chord;
}

/**
 * Notes as events, each in the first voice that is free when it begins.
 *
 * @throws ReedplateError `LINE_INVALID` for more than 64 notes that overlap
 */
export function toVoices(
  notes: readonly TimedNote[],
  words: readonly string[],
): readonly (readonly LineEvent[])[] {
  const voices: LineEvent[][] = [];
  const targets = graceTargets(notes);
  const graces = gracesAt(notes, targets);
  const counted = notes.filter((_, at) => targets[at] === undefined);
  let attack = -1;
  let lastStart = -1;
  for (const event of toEvents(counted)) {
    const isNewAttack = event.start !== lastStart;
    if (isNewAttack) attack += 1;
    lastStart = event.start;
    const word = isNewAttack ? words[attack] : undefined;
    const led = isNewAttack ? graces.get(event.start) : undefined;
    const worded = {
      ...event,
      ...(word === undefined ? {} : { word }),
      ...(led === undefined ? {} : { graces: led }),
    };
    const free = voices.find((voice) => (voice.at(-1)?.end ?? 0) <= event.start);
    if (free === undefined) {
      voices.push([worded]);
      requireVoices(voices.length);
    } else free.push(worded);
  }
  return voices;
}

/** The grace notes before each tick that some lead to; those that begin together are one. */
function gracesAt(
  notes: readonly TimedNote[],
  targets: readonly (number | undefined)[],
): ReadonlyMap<number, readonly (readonly GraceNote[])[]> {
  const found = new Map<number, GraceNote[][]>();
  let lastStart = -1;
  for (const [at, note] of notes.entries()) {
    const target = targets[at];
    if (target === undefined) continue;
    const grace = { pitch: note.pitch, ...playedOrNothing(playedOf(note)) };
    const run = found.get(target) ?? [];
    found.set(target, run);
    const isTogether = run.length > 0 && note.start === lastStart && note.start !== target;
    if (isTogether) run.at(-1)?.push(grace);
    else run.push([grace]);
    lastStart = note.start;
  }
  return found;
}

function playedOrNothing(played: PlayedAs): { readonly played?: PlayedAs } {
  return Object.keys(played).length === 0 ? {} : { played };
}

function toEvents(notes: readonly TimedNote[]): readonly LineEvent[] {
  const events = new Map<string, OpenEvent>();
  for (const note of notes) {
    const { start, duration, pitch, accent = false } = note;
    const key = `${start} ${duration} ${accent}`;
    const event = events.get(key);
    const begun = { start, end: start + duration, pitches: [pitch], played: [playedOf(note)] };
    // Two notes of one pitch at once are two voices, not one chord.
    if (event === undefined) events.set(key, begun);
    else if (event.pitches.includes(pitch)) events.set(`${key} ${events.size}`, begun);
    else {
      event.pitches.push(pitch);
      event.played.push(playedOf(note));
    }
  }
  return [...events.values()].sort((a, b) => a.start - b.start).map(closeEvent);
}

interface OpenEvent {
  readonly start: number;
  readonly end: number;
  readonly pitches: number[];
  readonly played: PlayedAs[];
}

/** Most notes say nothing of how they are played. */
function closeEvent({ played, ...event }: OpenEvent): LineEvent {
  const isSaid = played.some((each) => Object.keys(each).length > 0);
  return isSaid ? { ...event, played } : event;
}
