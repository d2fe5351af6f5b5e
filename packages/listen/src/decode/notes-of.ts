import type { NoteInSeconds, PitchPointInSeconds } from '@reedplate/line';
import { itemAt } from '@reedplate/pitch';
import { type Frame, HOP } from '../frames/frames.js';
import { median } from '../median.js';
import type { Moment, Setting } from './decode.js';

/** Frames that a note lasts at least: a twentieth of a second. */
const SHORTEST = 5;

/** Cents that a note has to move by to be given a curve. */
const LEAST_MOVE = 25;

/** The notes of the moments, with what the frames tell of each. */
export function notesOf(
  moments: readonly Moment[],
  frames: readonly Frame[],
  pitches: readonly number[],
  { loudest, offset }: Setting,
): readonly NoteInSeconds[] {
  return runsOf(moments)
    .filter(({ from, to }) => to - from >= SHORTEST)
    .map(({ note, from, to, held }) => {
      const pitch = itemAt(pitches, note);
      const within = frames.slice(from, to);
      const settled = frames.slice(held, to);
      const off = settled.flatMap((frame) => centsIn(frame, pitch + offset) ?? []);
      const cents = median(off) ?? 0;
      const curve = curveOf(within, pitch + offset);
      const level = Math.max(...within.map((frame) => frame.level));
      const clarity = median(settled.map((frame) => frame.clarity)) ?? 0;
      return {
        start: from * HOP,
        duration: (to - from) * HOP,
        pitch,
        cents: round(Math.max(-100, Math.min(100, cents)), 10),
        ...(curve === undefined ? {} : { curve }),
        velocity: Math.max(1, Math.min(127, Math.round(110 + 2 * (level - loudest)))),
        confidence: round(Math.max(0, Math.min(1, clarity)), 100),
      };
    });
}

interface Run {
  readonly note: number;
  /** First frame, first frame of the held part, and the frame after the last. */
  readonly from: number;
  readonly held: number;
  readonly to: number;
}

/** Stretches of one note; an attack after its being held begins another. */
function runsOf(moments: readonly Moment[]): readonly Run[] {
  const starts = [...moments.keys()].filter((at) => begins(moments[at - 1], itemAt(moments, at)));
  return starts.flatMap((from, index) => {
    const { note } = itemAt(moments, from);
    if (note < 0) return [];
    const to = starts[index + 1] ?? moments.length;
    const attack = moments.slice(from, to).findIndex(({ isAttack }) => !isAttack);
    return [{ note, from, held: from + Math.max(0, attack), to }];
  });
}

function begins(before: Moment | undefined, { note, isAttack }: Moment): boolean {
  return before?.note !== note || (isAttack && !before.isAttack);
}

/** The pitch from moment to moment, where it moves; undefined where it is level. */
function curveOf(
  frames: readonly Frame[],
  pitch: number,
): readonly PitchPointInSeconds[] | undefined {
  const points = frames.flatMap((frame, at) => {
    const cents = centsIn(frame, pitch);
    return cents === undefined ? [] : [{ at: round(at * HOP, 1000), cents: round(cents, 10) }];
  });
  const cents = points.map((point) => point.cents);
  const move = Math.max(...cents) - Math.min(...cents);
  return points.length > 1 && move >= LEAST_MOVE ? points : undefined;
}

/** Semitones beyond which a candidate is of another note. */
const FARTHEST = 2.5;

/** Cents by which what is heard of a pitch lies above it; undefined where nothing near it is. */
function centsIn({ candidates }: Frame, pitch: number): number | undefined {
  const near = candidates.find((each) => Math.abs(each.pitch - pitch) <= FARTHEST);
  return near === undefined ? undefined : 100 * (near.pitch - pitch);
}

function round(value: number, parts: number): number {
  return Math.round(value * parts) / parts;
}
