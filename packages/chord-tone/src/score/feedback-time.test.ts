import { describe, expect, it } from 'vitest';
import type { FeedbackInput } from './feedback.js';
import { remarksOnTime } from './feedback-time.js';
import type { TakeTiming } from './timing.js';

/** A take right on the beat, swung as triplets and played by a person. */
const GOOD: TakeTiming = { loose: 0.01, late: 0, drift: 0, swing: 2, bars: [] };

const said = (timing: Partial<TakeTiming>, feel: FeedbackInput['feel'] = 'shuffle') =>
  remarksOnTime({ timing: { ...GOOD, ...timing }, feel } as FeedbackInput).map(
    ({ code, by, bars }) => ({ code, by, bars }),
  );
const codes = (...of: Parameters<typeof said>) => said(...of).map(({ code }) => code);

describe('remarksOnTime', () => {
  it.each([
    [{}, []],
    // A seventh of a beat from the first third of the take to the last is heard as rushing or dragging.
    [{ drift: 0.15 }, ['TIME_DRAGS']],
    [{ drift: -0.15 }, ['TIME_RUSHES']],
    [{ drift: 0.149 }, []],
    [{ drift: -0.149 }, []],
    // A tenth of a beat throughout is behind, or ahead of, the beat.
    [{ late: 0.1 }, ['TIME_BEHIND']],
    [{ late: -0.1 }, ['TIME_AHEAD']],
    [{ late: 0.099 }, []],
    [{ late: -0.099 }, []],
    [{ loose: 0.035 }, ['TIME_LOOSE']],
    [{ loose: 0.034 }, []],
    [{ loose: null }, []],
  ] as const)('remarksOnTime of %j says %j', (timing, expected) => {
    expect(codes(timing)).toEqual(expected);
  });

  it('remarksOnTime says one thing of the beat: that it moves, else where it lies, else that it is loose', () => {
    expect(codes({ drift: 0.2, late: 0.2, loose: 0.05 })).toEqual(['TIME_DRAGS']);
    expect(codes({ late: 0.2, loose: 0.05 })).toEqual(['TIME_BEHIND']);
  });

  it('remarksOnTime names the bars that lie as far on the same side, and by how much the take does', () => {
    const bars = [0.3, 0.1, 0.09, -0.3, -0.1].map((late, at) => ({ bar: at + 1, late }));
    expect(said({ late: 0.12, bars })).toEqual([{ code: 'TIME_BEHIND', by: 0.12, bars: [1, 2] }]);
    expect(said({ late: -0.12, bars })).toEqual([{ code: 'TIME_AHEAD', by: 0.12, bars: [4, 5] }]);
    expect(said({ drift: -0.2, bars })).toEqual([{ code: 'TIME_RUSHES', by: 0.2, bars: [] }]);
  });

  it.each([
    [1, []],
    [1.1, ['SWING_STIFF']],
    [1.39, ['SWING_STIFF']],
    [1.4, []],
    [2, []],
    [3, []],
    [3.1, ['SWING_WIDE']],
  ])('remarksOnTime of a shuffle swung %s to 1 says %j', (swing, expected) => {
    expect(codes({ swing })).toEqual(expected);
    expect(codes({ swing }, 'straight')).toEqual([]);
  });

  it('remarksOnTime asks no swing of a written line, which is even to the tick', () => {
    for (const loose of [null, 0, 0.0039]) expect(codes({ swing: 1.2, loose })).toEqual([]);
    expect(codes({ swing: 1.2, loose: 0.004 })).toEqual(['SWING_STIFF']);
  });
});
