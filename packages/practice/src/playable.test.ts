import { FORMS, type Form, makeChart } from '@reedplate/form';
import { makeHarp, TECHNIQUE_LEVELS } from '@reedplate/layout';
import { type KeyName, type Tonic, TWELVE_KEYS } from '@reedplate/pitch';
import { harpKeyOf } from '@reedplate/position';
import { formatTab, markOf } from '@reedplate/tab';
import { describe, expect, it } from 'vitest';
import { PRACTICE_KINDS, practiceLine } from './practice-line.js';

/** What is wrong with a word of tab on a ten-hole harp, read from its letters alone. */
function complaintOf(word: string): string | undefined {
  const marks = [...word.matchAll(/([+-])(\d+)('*)(o?)/gu)];
  const plain = word.replace(/[()]/gu, '');
  if (marks.map(([whole]) => whole).join('') !== plain) return `${word} cannot be read`;
  if (new Set(marks.map(([, breath]) => breath)).size !== 1) return `${word} mixes blow and draw`;
  const holes = marks.map(([, , hole]) => Number(hole));
  if (holes.some((hole) => hole < 1 || hole > 10)) return `${word} is off the harp`;
  if (new Set(holes).size !== holes.length) return `${word} has a hole twice`;
  const width = Math.max(...holes) - Math.min(...holes) + 1;
  if (width > 5) return `${word} is wider than a mouth`;
  const isSplit = holes.length > 1 && width > holes.length;
  if (isSplit && holes.length > 2) return `${word} blocks more than one gap`;
  const bent = marks.some(([, , , bend, over]) => bend !== '' || over !== '');
  return bent && marks.length > 1 ? `${word} bends a chord` : undefined;
}

describe('complaintOf', () => {
  it.each(['-2', "-3''", '(-2-3-4)', '(+1+4)', '+6o'])('takes %s', (word) => {
    expect(complaintOf(word)).toBeUndefined();
  });

  it.each(['(-2+4+5)', '-11', '(+1+6)', "(-2'-3)", '(-1-3-4)', 'x'])('refuses %s', (word) => {
    expect(complaintOf(word)).toBeDefined();
  });
});

/** The key of a form on a tonic, by the names that keys have. */
function keyFor({ mode }: Form, tonic: Tonic): KeyName {
  if (mode === 'major') return tonic;
  const sharp = new Map<Tonic, Tonic>([
    ['Db', 'C#'],
    ['Ab', 'G#'],
  ]);
  return `${sharp.get(tonic) ?? tonic}m` as KeyName;
}

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
          const wrong = words.map(complaintOf).filter((complaint) => complaint !== undefined);
          expect(wrong, `${form.id} at ${level}`).toEqual([]);
        }
      }
    },
  );
});
