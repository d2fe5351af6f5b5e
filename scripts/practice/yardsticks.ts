import type { Line, TimedNote } from '@reedplate/line';

/** Shares by name; they add up to 1. */
export type Shares = ReadonlyMap<string, number>;

/** How often each value comes, as shares. */
export function sharesOf(values: readonly string[]): Shares {
  const counts = new Map<string, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return new Map([...counts].map(([value, count]) => [value, count / values.length]));
}

/** Half the sum of all differences: 0 where they are the same, 1 where nothing is shared. */
export function distance(a: Shares, b: Shares): number {
  const names = new Set([...a.keys(), ...b.keys()]);
  return (
    [...names].reduce((sum, name) => sum + Math.abs((a.get(name) ?? 0) - (b.get(name) ?? 0)), 0) / 2
  );
}

type Notes = Pick<Line, 'notes'>;

/** Notes in order, the highest of what begins together. */
export function topNotes({ notes }: Notes): readonly TimedNote[] {
  const byStart = new Map<number, TimedNote>();
  for (const note of notes) {
    const before = byStart.get(note.start);
    if (before === undefined || note.pitch > before.pitch) byStart.set(note.start, note);
  }
  return [...byStart.values()].sort((a, b) => a.start - b.start);
}

/** Pitches of a line in order, the highest of what begins together. */
export function melodyOf(line: Notes): readonly number[] {
  return topNotes(line).map(({ pitch }) => pitch);
}

/** Semitones from note to note. */
export function intervalsOf(pitches: readonly number[]): readonly string[] {
  return pitches.slice(1).map((pitch, at) => `${pitch - (pitches[at] ?? pitch)}`);
}

/** Semitones of each note above the tonic, within the octave. */
export function degreesOf(pitches: readonly number[], tonic: number): readonly string[] {
  return pitches.map((pitch) => `${(((pitch - tonic) % 12) + 12) % 12}`);
}

/** Ticks of a quarter note. */
const QUARTER = 960;
const LONGEST = 16;

/** Lengths of notes to the nearest quarter of a quarter note. */
export function lengthsOf(line: Notes): readonly string[] {
  return topNotes(line).map(({ duration }) => `${Math.round((4 * duration) / QUARTER)}`);
}

/** Share of the time, from the first note to the end of the last, in which nothing sounds. */
export function restShare(line: Notes): number {
  const notes = topNotes(line);
  const [first] = notes;
  if (first === undefined) return 0;
  let end = first.start;
  let silent = 0;
  for (const { start, duration } of notes) {
    silent += Math.max(0, start - end);
    end = Math.max(end, start + duration);
  }
  return silent / (end - first.start);
}

/** Length in quarters of what is played without a rest of a quarter; what is longer counts as 16. */
export function phraseLengths(line: Notes): readonly string[] {
  const lengths: number[] = [];
  let from: number | undefined;
  let end = 0;
  for (const { start, duration } of topNotes(line)) {
    if (from === undefined || start - end >= QUARTER) {
      if (from !== undefined) lengths.push(end - from);
      from = start;
      end = start;
    }
    end = Math.max(end, start + duration);
  }
  if (from !== undefined) lengths.push(end - from);
  return lengths.map((ticks) => `${Math.min(LONGEST, Math.round(ticks / QUARTER))}`);
}

/** Every four intervals in a row, as one word. */
function patternsOf(pitches: readonly number[]): readonly string[] {
  const steps = intervalsOf(pitches);
  return steps.slice(3).map((_, at) => steps.slice(at, at + 4).join(' '));
}

/** Share of four-interval groups that come again in the same line. */
export function repeatedPatterns(pitches: readonly number[]): number {
  const groups = patternsOf(pitches);
  const counts = sharesOf(groups);
  const again = groups.filter((group) => (counts.get(group) ?? 0) * groups.length > 1.5);
  return groups.length === 0 ? 0 : again.length / groups.length;
}

/** Share of notes that begin a four-interval group which comes again, in this line or in another of the set. */
export function notesInPatterns(lines: readonly (readonly number[])[]): number {
  const all = lines.map(patternsOf);
  const counts = new Map<string, number>();
  for (const group of all.flat()) counts.set(group, (counts.get(group) ?? 0) + 1);
  const again = all.flat().filter((group) => (counts.get(group) ?? 0) > 1).length;
  return again / lines.reduce((sum, line) => sum + line.length, 0);
}

/** Different four-interval groups among all: 1 where none comes again. */
export function variety(pitches: readonly number[]): number {
  const groups = patternsOf(pitches);
  return groups.length === 0 ? 0 : new Set(groups).size / groups.length;
}

/** The one in the middle, or the mean of two. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const low = sorted[Math.floor((sorted.length - 1) / 2)] ?? 0;
  const high = sorted[Math.floor(sorted.length / 2)] ?? 0;
  return (low + high) / 2;
}
