import { makeChart, makeForm } from '@reedplate/form';
import { makeHarp, makePlayer, tuningById } from '@reedplate/layout';
import { parseMetre } from '@reedplate/line';
import { describe, expect, it } from 'vitest';
import { parsePhrase } from '../phrase/parse-phrase.js';
import { callsOver } from './calls.js';
import { makeLesson } from './make-lesson.js';

const harp = makeHarp('C');

describe('callsOver', () => {
  it('callsOver leaves two bars of rest behind each two, in forms of 8, 12 and 16 bars', () => {
    for (const form of ['eight-bar', 'basic', 'sixteen-bar'] as const) {
      const chart = makeChart(form, 'G');
      const { barTicks } = parseMetre(chart.metre);
      const calls = callsOver({ chart, harp, level: 'natural' });
      expect(calls?.answers).toBe(true);
      expect(calls?.soundings.length).toBe(calls?.line.notes.length);
      for (const { start, duration } of calls?.line.notes ?? []) {
        expect((start % (4 * barTicks)) + duration).toBeLessThanOrEqual(2 * barTicks);
      }
    }
  });

  it('callsOver leaves a chorus of other phrases whole', () => {
    const bar = [{ numeral: 'I7', weight: 1 }] as const;
    const chart = makeChart(makeForm([[...bar], [...bar], [...bar]]), 'G');
    const calls = callsOver({ chart, harp, level: 'bends' });
    expect(calls?.answers).toBe(false);
    expect(new Set(calls?.line.notes.map(({ start }) => Math.floor(start / 3840)))).toContain(2);
  });

  it('callsOver has none for a player who has no tone of a chord', () => {
    const level = makePlayer([{ technique: 'natural', breath: 'blow', holes: [2] }]);
    const chart = makeChart('basic', 'G');
    expect(callsOver({ chart, harp, level })).toBeUndefined();
  });
});

describe('what makeLesson knows', () => {
  it("makeLesson takes a form, a tuning and phrases of one's own together, by their ids", () => {
    const mine = makeForm([[{ numeral: 'I7', weight: 1 }], [{ numeral: 'V7', weight: 1 }]], {
      id: 'mine',
    });
    const riff = parsePhrase('-2 -3 -4 r', { id: 'my-riff', kind: 'riff', from: 'chord' });
    const known = { forms: [mine], tunings: [tuningById('standard')], phrases: [riff] };
    const { steps } = makeLesson({ form: 'mine', key: 'G', harp: 'C', goals: ['riff'], known });
    expect(steps[0]?.title).toBe('A riff through the form: my riff');
    expect(() => makeLesson({ form: 'mine', key: 'G', known: { riffs: [] } as never })).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
    );
  });
});
