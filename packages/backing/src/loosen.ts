import { type Line, makeLine, parseMetre } from '@reedplate/line';
import { type Random, requireInteger } from '@reedplate/pitch';

/** Milliseconds that a player who is loose on purpose comes late at most; 30 are heard as sloppy. */
const MOST = 30;

/** How late notes may come, if it is a number of milliseconds. */
export function requireLooseness(looseness: unknown): number {
  return requireInteger(looseness, {
    min: 0,
    max: MOST,
    what: 'milliseconds that notes come late',
  });
}

/**
 * A line whose notes come late by chance, each by up to so many milliseconds, and end where they did: so none
 * sounds in a break. What is struck together stays together.
 */
export function loosen(line: Line, milliseconds: number, tempo: number, random: Random): Line {
  if (milliseconds === 0) return line;
  const most = (milliseconds * tempo * parseMetre(line.metre).beatTicks) / 60_000;
  const { notes, ...head } = line;
  const barOne = (line.countIn ?? 0) * parseMetre(line.metre).barTicks;
  const lateness = new Map<number, number>();
  for (const { start } of notes) {
    // Who counts in does so exactly.
    if (start >= barOne && !lateness.has(start)) lateness.set(start, Math.round(random() * most));
  }
  return makeLine(
    notes.map((note) => {
      const late = Math.min(note.duration - 1, lateness.get(note.start) ?? 0);
      return { ...note, start: note.start + late, duration: note.duration - late };
    }),
    head,
  );
}
