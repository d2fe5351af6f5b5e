import { readFileSync } from 'node:fs';
import type { NoteInSeconds } from '@reedplate/line';

/** Seconds of each solo that are played. */
const LONGEST = 15;

/** A take to be heard: its notes, one after another, and whether it is one to choose on. */
export interface Take {
  readonly id: number;
  readonly notes: readonly NoteInSeconds[];
}

/**
 * The first seconds of solos of the Weimar Jazz Database (Pfleiderer, Frieler et al., 2017, Open Database
 * License 1.0), given by path, moved by octaves to lie on a harp in C.
 */
export function readTakes(path: string): readonly Take[] {
  return readFileSync(path, 'utf8')
    .split('\n')
    .filter((row) => row !== '')
    .map((row) => {
      const { id, notes } = JSON.parse(row) as {
        id: number;
        notes: readonly (readonly number[])[];
      };
      const first = notes[0]?.[5] ?? 0;
      const timed = notes.map((note) => ({
        start: (note[5] ?? 0) - first + 0.5,
        duration: note[6] ?? 0,
        pitch: onHarp(note[8] ?? 60),
      }));
      const within = timed.filter(({ start, duration }) => start + duration < LONGEST);
      return { id, notes: within.map((note, at) => endBefore(note, within[at + 1])) };
    });
}

function onHarp(pitch: number): number {
  return pitch < 60 ? onHarp(pitch + 12) : pitch > 96 ? onHarp(pitch - 12) : pitch;
}

/** One reed at a time: a note ends where the next begins. */
function endBefore(note: NoteInSeconds, next: NoteInSeconds | undefined): NoteInSeconds {
  const end = Math.min(note.start + note.duration, next?.start ?? LONGEST);
  return { ...note, duration: Math.max(0.05, end - note.start) };
}
