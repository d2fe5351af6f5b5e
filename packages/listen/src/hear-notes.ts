import {
  type HarpLike,
  type KnownTunings,
  type PlayerLike,
  soundings,
  toHarp,
} from '@reedplate/layout';
import type { NoteInSeconds } from '@reedplate/line';
import { deepFreeze, itemAt, type OptionNames, requireOptions } from '@reedplate/pitch';
import { decode } from './decode/decode.js';
import { notesOf } from './decode/notes-of.js';
import { referenceOf } from './decode/reference.js';
import { framesOf } from './frames/frames.js';
import { requireSound, type Sound } from './sound.js';

/** What is heard in a recording. */
export interface HeardNotes {
  /** In seconds, one after another; their cents are counted from {@link HeardNotes.reference}. */
  readonly notes: readonly NoteInSeconds[];
  /** Hertz of A4 as the instrument is tuned. */
  readonly reference: number;
  /** Seconds of the recording. */
  readonly seconds: number;
}

/** What helps to hear. */
export interface HearNotesOptions {
  /** The harp that plays, or its name: only what it sounds is heard. Default any pitch. */
  readonly harp?: HarpLike;
  /** What the player can do, where the harp is known; default `overbends`. */
  readonly level?: PlayerLike;
  /** Tunings of one's own, for a harp that is named in one. */
  readonly known?: KnownTunings;
}

const HEAR_OPTIONS: OptionNames<HearNotesOptions> = { harp: true, level: true, known: true };

/** From the lowest hole of the lowest harps to the highest of the highest. */
const LOWEST = 40;
const HIGHEST = 103;

/**
 * The notes of a recording of one harmonica, one at a time: when each begins and ends, its pitch, the cents of
 * its held part, its pitch from moment to moment where that moves, its loudness and how clear it is.
 *
 * Chords and double stops are heard as one of their notes, or not at all.
 *
 * @throws ReedplateError `SOUND_INVALID`, `HARP_INVALID`, `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { hearNotes } from '@reedplate/listen';
 *
 * const samples = Float32Array.from({ length: 44_100 }, (_, at) => Math.sin((2 * Math.PI * 442 * at) / 44_100) / 2);
 * const { notes, reference } = hearNotes({ sampleRate: 44_100, samples });
 * notes.map(({ pitch }) => pitch); // => [69]
 * Math.round(reference); // => 442
 * hearNotes({ sampleRate: 0, samples }); // throws SOUND_INVALID
 * ```
 */
export function hearNotes(sound: Sound, options: HearNotesOptions = {}): HeardNotes {
  requireOptions(options, HEAR_OPTIONS, 'hearNotes');
  const { sampleRate, samples } = requireSound(sound);
  const frames = framesOf(sound);
  const offset = referenceOf(frames);
  const pitches = pitchesOf(options);
  const setting = { loudest: loudestOf(frames.map(({ level }) => level)), offset };
  return deepFreeze({
    notes: notesOf(decode(frames, pitches, setting), frames, pitches, setting),
    reference: 440 * 2 ** (offset / 12),
    seconds: samples.length / sampleRate,
  });
}

function pitchesOf({ harp, level = 'overbends', known }: HearNotesOptions): readonly number[] {
  if (harp === undefined) {
    return Array.from({ length: HIGHEST - LOWEST + 1 }, (_, at) => LOWEST + at);
  }
  const sounded = soundings(toHarp(harp, known), { level }).map(({ pitch }) => pitch);
  return [...new Set(sounded)].sort((a, b) => a - b);
}

/** Share of the frames that may be louder than the loudest playing: a cough, a knock. */
const LOUDER = 0.02;

function loudestOf(levels: readonly number[]): number {
  const sorted = [...levels].sort((a, b) => b - a);
  return itemAt(sorted, Math.floor(sorted.length * LOUDER));
}
