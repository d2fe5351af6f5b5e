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

describe.each(PRACTICE_KINDS)('practiceLine of %s', (kind) => {
  it.each(TWELVE_KEYS.map(({ tonic }) => tonic))(
    'plays on one breath, on the harp and within reach, over every form in %s at every level',
    (tonic) => {
      const harp = makeHarp(harpKeyOf(tonic, 2));
      for (const form of FORMS) {
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
