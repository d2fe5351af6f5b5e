import type { Line, TimedNote } from '@reedplate/line';

/** A note as it is heard: its tied parts made one, in ticks of the chart. */
export interface Heard {
  /** Index in the line of the first of its parts. */
  readonly index: number;
  readonly pitch: number;
  /** May be negative: before the chart. */
  readonly start: number;
  readonly end: number;
  /** Whether the line says that it is a grace note. */
  readonly grace?: true;
}

/**
 * The notes of a line as they are heard: a line has no ties, so a note that begins just as another of
 * its pitch ends is its continuation.
 *
 * @param shift ticks added to every time
 */
export function hearNotes({ notes }: Pick<Line, 'notes'>, shift: number): readonly Heard[] {
  const heard: Mutable<Heard>[] = [];
  const latest = new Map<number, Mutable<Heard>>();
  for (let index = 0; index < notes.length; index += 1) {
    const { start, duration, pitch, grace } = notes[index] as TimedNote;
    const from = start + shift;
    const before = latest.get(pitch);
    if (before?.end === from) {
      before.end = from + duration;
      continue;
    }
    const note: Mutable<Heard> = { index, pitch, start: from, end: from + duration };
    if (grace === true) note.grace = true;
    latest.set(pitch, note);
    heard.push(note);
  }
  return heard;
}

type Mutable<Type> = { -readonly [Name in keyof Type]: Type[Name] };

/** The same notes so many ticks earlier. */
export function moveEarlier(notes: readonly Heard[], ticks: number): readonly Heard[] {
  if (ticks === 0) return notes;
  return notes.map((note) => ({ ...note, start: note.start - ticks, end: note.end - ticks }));
}
