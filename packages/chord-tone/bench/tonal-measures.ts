import type { ChangeScore, NoteScore, ScoreMeasures } from '@reedplate/chord-tone';
import type { NamedChart, NamedTime } from './tonal-line.js';

// The measures of scoreLine from judged notes, for playing in even eighths.

const TONES: ReadonlySet<string> = new Set(['root', 'guide-tone', 'chord-tone']);

/** Mean distance of a time drawn at random from the nearest quarter or third of a beat, in beats. */
const AT_RANDOM = (2 * (1 / 4) ** 2 + 2 * (1 / 12) ** 2 + 2 * (1 / 6) ** 2) / 4;

/** All measures, in one pass over the notes. */
export function measureNotes(
  notes: readonly NoteScore[],
  changes: readonly ChangeScore[],
  line: readonly NamedTime[],
  { pickup, beatTicks }: NamedChart,
  following: number | null,
): ScoreMeasures {
  const sum = { credit: 0, weight: 0, time: 0, clash: 0, all: 0, tones: 0, guides: 0 };
  const rest = { weight: 0, resolved: 0 };
  const onsets = { count: 0, distance: 0 };
  for (let at = 0; at < notes.length; at += 1) {
    const note = notes[at] as NoteScore;
    const { weight, duration, start } = note;
    if (!note.held) {
      onsets.count += 1;
      onsets.distance += distanceFromGrid((start - pickup) / beatTicks);
    }
    if (note.class === 'unjudged') continue;
    sum.weight += weight;
    sum.credit += weight * note.credit;
    sum.time += duration;
    if (note.class === 'clash') sum.clash += duration;
    const share = duration * (1 + note.metre);
    sum.all += share;
    if (note.class === 'guide-tone') sum.guides += share;
    if (TONES.has(note.class)) {
      sum.tones += share;
      continue;
    }
    rest.weight += weight;
    if (note.resolvesTo === null) continue;
    const wait = (line[note.resolvesTo]?.start ?? 0) - start;
    rest.resolved += weight * (1 - wait / (2 * beatTicks));
  }
  const timing = 1 - onsets.distance / onsets.count / AT_RANDOM;
  return Object.freeze({
    chordFit: share(sum.credit, sum.weight),
    following,
    landing: mean(changes.map(({ landing }) => landing)),
    coverage: mean(changes.map(({ shown }) => (shown === null ? null : Number(shown)))),
    chordToneShare: share(sum.tones, sum.all),
    guideToneShare: share(sum.guides, sum.all),
    clashTime: share(sum.clash, sum.time),
    resolution: share(rest.resolved, rest.weight),
    timing: onsets.count === 0 ? null : Math.max(0, timing),
  });
}

function share(part: number, whole: number): number | null {
  return whole === 0 ? null : Math.max(0, part / whole);
}

function mean(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return share(
    known.reduce((sum, value) => sum + value, 0),
    known.length,
  );
}

function distanceFromGrid(beats: number): number {
  const quarters = Math.abs(beats - Math.round(4 * beats) / 4);
  return Math.min(quarters, Math.abs(beats - Math.round(3 * beats) / 3));
}
