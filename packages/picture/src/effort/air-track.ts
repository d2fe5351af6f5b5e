import type { Breath } from '@reedplate/layout';
import type { ExplainedStep } from '@reedplate/playability';

/** A stretch of time in which air is drawn, blown or, in a rest, brought back towards half full. */
export interface AirStretch {
  readonly start: number;
  readonly end: number;
  readonly breath: Breath | 'rest';
  /** Air in seconds from half full. */
  readonly before: number;
  readonly after: number;
}

/** The air along the steps of a path, rests between them included. */
export function airTrack(
  steps: readonly ExplainedStep[],
  chordAir: number,
  secondsPerTick: number,
): readonly AirStretch[] {
  const stretches: AirStretch[] = [];
  let air = 0;
  let at = steps[0]?.start ?? 0;
  for (const { start, duration, soundings, air: after } of steps) {
    if (start > at) {
      const flow = (1 + chordAir * (soundings.length - 1)) * duration * secondsPerTick;
      const began = soundings[0].breath === 'draw' ? after - flow : after + flow;
      const before = between(began, 0, air);
      stretches.push({ start: at, end: start, breath: 'rest', before: air, after: before });
      air = before;
    }
    const end = start + duration;
    stretches.push({ start, end, breath: soundings[0].breath, before: air, after });
    air = after;
    at = end;
  }
  return stretches;
}

function between(value: number, one: number, other: number): number {
  return Math.min(Math.max(value, Math.min(one, other)), Math.max(one, other));
}
