import type { FeedbackInput } from './feedback.js';
import { remark } from './remark.js';
import type { Feedback, FeedbackCode } from './score-types.js';
import type { BarTiming } from './timing.js';

/** From what on time is worth a remark, in felt beats; swing as long to short. Design choice. */
const NOTICED = Object.freeze({ late: 0.1, drift: 0.15, loose: 0.035, stiff: 1.4, wide: 3 });

/** How far onsets lie from the grid where a person plays: below it a line is written, not played. */
const PLAYED = 0.004;

/** At most one remark on the place of the beat, and one on the swing. */
export function remarksOnTime(input: FeedbackInput): readonly Feedback[] {
  return [...remarkOnBeat(input), ...remarkOnSwing(input)];
}

function remarkOnBeat({ timing }: FeedbackInput): readonly Feedback[] {
  const { drift, late, loose, bars } = timing;
  if (Math.abs(drift) >= NOTICED.drift)
    return [told(drift < 0 ? 'TIME_RUSHES' : 'TIME_DRAGS', drift, [])];
  if (Math.abs(late) >= NOTICED.late) {
    return [told(late > 0 ? 'TIME_BEHIND' : 'TIME_AHEAD', late, barsPast(bars, late))];
  }
  return loose !== null && loose >= NOTICED.loose ? [told('TIME_LOOSE', loose, [])] : [];
}

/** The bars that are as late, or as early, as is noticed. */
function barsPast(bars: readonly BarTiming[], late: number): readonly number[] {
  return bars.filter((bar) => bar.late * Math.sign(late) >= NOTICED.late).map(({ bar }) => bar);
}

/** Written lines are even whatever the feel: only what is played is told to swing more. */
function remarkOnSwing({ timing, feel }: FeedbackInput): readonly Feedback[] {
  const { swing, loose } = timing;
  if (feel !== 'shuffle' || loose === null || loose < PLAYED) return [];
  if (swing > NOTICED.wide) return [told('SWING_WIDE', swing, [])];
  return swing > 1 && swing < NOTICED.stiff ? [told('SWING_STIFF', swing, [])] : [];
}

function told(code: FeedbackCode, by: number, bars: readonly number[]): Feedback {
  return remark(code, { by: Math.abs(by), bars, count: bars.length });
}
