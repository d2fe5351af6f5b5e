import { makeChart } from '@reedplate/form';
import { makeLine } from '@reedplate/line';
import { describe, expect, it } from 'vitest';
import type { FeedbackInput } from './feedback.js';
import { remarksOnSilence } from './feedback-whole.js';
import { scoreLine } from './score-line.js';

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

describe('a fault of the whole take', () => {
  it('its cure lies near what was played over the chord, not near the first note', () => {
    const chart = makeChart('basic', 'G');
    // G throughout, an octave higher wherever the chord is another.
    const notes = chart.spans.flatMap(({ start, end, numeral }) =>
      Array.from({ length: (end - start) / 960 }, (_, beat) => ({
        start: start + beat * 960,
        duration: 960,
        pitch: numeral === 'I7' ? 67 : 91,
      })),
    );
    const { feedback } = scoreLine(makeLine(notes), chart, { harp: 'C' });
    const fault = feedback.find(({ code }) => code === 'STAYS_ON_ONE_CHORD');
    expect(fault?.chord).toBeNull();
    expect(fault?.suggestions.length).toBeGreaterThan(0);
    for (const { pitch } of fault?.suggestions ?? []) expect(pitch).toBeGreaterThan(80);
  });

  it.each([0, 960])(
    'a chord that is passed over alone is named, %d ticks before bar 1',
    (pickup) => {
      const chart = makeChart('basic', 'G', { pickup });
      const tones = (root: number) => [root, root + 4, root + 7, root + 4];
      const notes = chart.spans.flatMap(({ start, end, numeral }) =>
        Array.from({ length: (end - start) / 960 }, (_, beat) => ({
          start: start + beat * 960,
          duration: 800,
          pitch: tones(numeral === 'IV7' ? 72 : 67)[beat % 4] ?? 67,
        })),
      );
      const { feedback } = scoreLine(makeLine(notes, { pickup }), chart, { harp: 'C' });
      expect(feedback[0]).toMatchObject({ code: 'CHORD_MISSED', chord: 'D7', bars: [9, 12] });
    },
  );
});
