import { describe, expect, it } from 'vitest';
import type { FeedbackInput } from './feedback.js';
import { remarksOnSilence } from './feedback-whole.js';

/** A take of a whole chorus that nothing is wrong with. */
const WHOLE = { silentBars: [], silent: 0, outside: 0, struck: 40, fault: null } as const;
const said = (parts: Partial<FeedbackInput>) =>
  remarksOnSilence({ ...WHOLE, ...parts } as FeedbackInput).map(
    ({ code, bars, count }) => `${code} ${bars.join()} ${count}`,
  );

describe('remarksOnSilence', () => {
  it('remarksOnSilence has nothing to say of a take that fills its chorus', () => {
    expect(said({})).toEqual([]);
  });

  it('remarksOnSilence names the bars that stayed empty from a tenth of the chorus on', () => {
    const silentBars = [10, 11, 12];
    expect(said({ silentBars, silent: 0.1 })).toEqual(['BARS_NOT_PLAYED 10,11,12 3']);
    expect(said({ silentBars, silent: 0.09 })).toEqual([]);
  });

  it('remarksOnSilence counts every note that no chord stands under', () => {
    expect(said({ outside: 1 })).toEqual(['NOTES_OUTSIDE_CHART  1']);
  });

  it('remarksOnSilence calls 22 notes little to judge by, and 23 enough', () => {
    expect(said({ struck: 22 })).toEqual(['LITTLE_TO_JUDGE  22']);
    expect(said({ struck: 23 })).toEqual([]);
    const fault = { code: 'TAKE_BARS_LATE', by: 1, explains: 1 } as const;
    expect(said({ struck: 3, fault })).toEqual([]);
  });
});
