import { FORMS, makeChart } from '@reedplate/form';
import { makeHarp, TECHNIQUE_LEVELS } from '@reedplate/layout';
import { TWELVE_KEYS } from '@reedplate/pitch';
import { harpKeyOf } from '@reedplate/position';
import { PRACTICE_KINDS, practiceLine } from '@reedplate/practice';
import { formatTab, markOf } from '@reedplate/tab';
import { describe, expect, it } from 'vitest';
import { keyFor } from './playable/key-for.js';
import { complaintOf } from './playable/tab-complaint.js';

describe('complaintOf', () => {
  it.each(['-2', "-3''", '(-2-3-4)', '(+1+4)', '+6o'])('takes %s', (word) => {
    expect(complaintOf(word)).toBeUndefined();
  });

  it.each(['(-2+4+5)', '-11', '(+1+6)', "(-2'-3)", '(-1-3-4)', 'x'])('refuses %s', (word) => {
    expect(complaintOf(word)).toBeDefined();
  });
});

// Every form in four of the twelve keys; `scripts/playable-files.ts` goes through all.
const KEYS = TWELVE_KEYS.map(({ tonic }, index) => ({ tonic, index }));

describe.each(PRACTICE_KINDS)('practiceLine of %s', (kind) => {
  it.each(KEYS)(
    'plays on one breath, on the harp and within reach, over a third of the forms in $tonic at every level',
    ({ tonic, index }) => {
      const harp = makeHarp(harpKeyOf(tonic, 2));
      for (const form of FORMS.filter((_, at) => at % 3 === index % 3)) {
        const chart = makeChart(form, keyFor(form, tonic));
        for (const level of TECHNIQUE_LEVELS) {
          const { steps } = practiceLine(chart, harp, { kind, level });
          const words = steps.map(({ soundings }) => formatTab([soundings.map(markOf)]));
          const wrong = words
            .map((word) => complaintOf(word))
            .filter((complaint) => complaint !== undefined);
          expect(wrong, `${form.id} at ${level}`).toEqual([]);
        }
      }
    },
  );
});
