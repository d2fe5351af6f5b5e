import { describeFeedback, describeVerdict, type Score, scoreLine } from '@reedplate/chord-tone';
import { type Line, lineFromSeconds, type NoteInSeconds } from '@reedplate/line';
import { nextSteps } from '@reedplate/practice';
import type { Session } from './session.js';

/** Seconds before the first bar of a pass that belong to it: who comes early on the one is not left out. */
export const LEAD = 0.2;

/** A take that was judged, in words too. */
export interface JudgedTake {
  readonly line: Line;
  readonly score: Score;
  readonly verdict: string;
  readonly remarks: readonly string[];
  readonly next: readonly string[];
}

/**
 * The line of one time through what is played.
 *
 * @param notes in seconds from {@link LEAD} before its first bar
 */
export function lineOfPass(notes: readonly NoteInSeconds[], session: Session): Line {
  const { song, bars, secondsOfBar, passSeconds } = session;
  const before = (bars[0] - 1) * secondsOfBar;
  const laid = notes
    .map((note) => ({ ...note, start: note.start - LEAD }))
    .filter(({ start, duration }) => start + duration > 0 && start < passSeconds)
    .map((note) => ({
      ...note,
      duration: note.duration + Math.min(0, note.start),
      start: before + Math.max(0, note.start),
    }));
  return lineFromSeconds(laid, { tempo: song.tempo ?? 96, metre: song.metre, title: 'Take' });
}

/**
 * Judges a line that was played over a session.
 *
 * @param isCalibrated whether its lateness was taken off already; else it is estimated
 * @throws ReedplateError `LINE_EMPTY` where nothing was played
 */
export function judgeTake(line: Line, session: Session, isCalibrated: boolean): JudgedTake {
  const { song, harp, level, bars } = session;
  const isPart = bars[0] !== 1 || bars[1] !== song.bars;
  const score = scoreLine(line, song, {
    harp,
    level,
    latency: isCalibrated ? 0 : 'estimate',
    ...(isPart ? { bars } : {}),
  });
  return {
    line,
    score,
    verdict: describeVerdict(score.verdict),
    remarks: score.feedback.map(describeFeedback),
    next: nextSteps([score]).map(({ words }) => words),
  };
}

/** Onsets of clicks heard, against when they were played: how late the ears are, in milliseconds. */
export function latencyOf(heard: readonly number[], played: readonly number[]): number | undefined {
  const late = played.flatMap((click) => {
    const after = heard.find((onset) => onset >= click - 0.02 && onset < click + MOST_LATE);
    return after === undefined ? [] : [(after - click) * 1000];
  });
  // Half of the clicks must have been heard, or it was something else.
  if (late.length < played.length / 2) return undefined;
  const sorted = [...late].sort((a, b) => a - b);
  return Math.max(0, Math.round(sorted[Math.floor(sorted.length / 2)] as number));
}

const MOST_LATE = 0.4;

/** Seconds at which something loud begins: louder by far than just before. */
export function onsetsIn(samples: Float32Array, sampleRate: number): readonly number[] {
  const window = Math.round(sampleRate / 200);
  const powers = Array.from({ length: Math.floor(samples.length / window) }, (_, at) => {
    const part = samples.subarray(at * window, (at + 1) * window);
    return part.reduce((sum, sample) => sum + sample * sample, 0) / window;
  });
  const loudest = powers.reduce((most, power) => Math.max(most, power), 0);
  const onsets: number[] = [];
  for (const [at, power] of powers.entries()) {
    const second = (at * window) / sampleRate;
    const isLoud = power > loudest / 20 && power > 1e-6;
    if (isLoud && second - (onsets.at(-1) ?? -1) > REST) onsets.push(second);
  }
  return onsets;
}

/** Seconds in which a click does not begin again. */
const REST = 0.25;
