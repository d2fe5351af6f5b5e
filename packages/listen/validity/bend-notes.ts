import type { NoteInSeconds } from '@reedplate/line';
import { randomFrom } from '@reedplate/pitch';

/** Points of a curve a second. */
const POINTS = 100;

/**
 * The notes as a player of bends might play them, from a seed: some are scooped into, some held flat, some shake
 * by 30 cents five times a second.
 */
export function bendNotes(notes: readonly NoteInSeconds[], seed: number): readonly NoteInSeconds[] {
  const random = randomFrom(seed);
  return notes.map((note) => {
    const [kind, depth] = [random(), random()];
    if (note.duration < 0.15 || kind > 0.6) return note;
    if (kind < 0.25)
      return withCurve(note, (at) => -150 * (0.5 + depth / 2) * Math.max(0, 1 - at / 0.09));
    if (kind < 0.4) return withCurve(note, () => -20 - 20 * depth);
    if (note.duration < 0.4) return note;
    return withCurve(note, (at) => 30 * Math.sin(2 * Math.PI * 5 * at));
  });
}

function withCurve(note: NoteInSeconds, centsAt: (seconds: number) => number): NoteInSeconds {
  const count = Math.ceil(note.duration * POINTS);
  const curve = Array.from({ length: count }, (_, at) => ({
    at: at / POINTS,
    cents: centsAt(at / POINTS),
  }));
  const cents = [...curve].map((point) => point.cents).sort((a, b) => a - b)[count >> 1] ?? 0;
  return { ...note, cents, curve };
}
