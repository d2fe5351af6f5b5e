import { PITCH_CLASSES } from '@reedplate/pitch';
import { describe, expect, test } from 'vitest';
import { FORMS } from './catalogue.js';
import { formById } from './form-by-id.js';
import { parseForm } from './parse-form.js';
import { rankForms } from './rank-forms.js';

const barsOf = (text: string) => parseForm(text, { key: 'C' }).bars;
const G_BLUES = barsOf('G7 | % | % | % | C7 | % | G7 | % | D7 | C7 | G7 | D7');
const ALL = { forms: FORMS, tonics: PITCH_CLASSES, runnersUp: 10_000, closings: false };

describe('rankForms', () => {
  test('rankForms with room for all ranks every form on every tonic', () => {
    const ranked = rankForms(G_BLUES, ALL);
    expect(ranked.length).toBe(FORMS.length * PITCH_CLASSES.length);
    const costs = ranked.map(({ cost }) => cost);
    expect(costs).toEqual([...costs].sort((a, b) => a - b));
  });

  test('rankForms with room for few gives the same beginning', () => {
    const all = rankForms(G_BLUES, ALL).map(({ form, tonic, cost }) => [form.id, tonic, cost]);
    for (const runnersUp of [1, 3, 20]) {
      const few = rankForms(G_BLUES, { ...ALL, runnersUp });
      const wanted = all.slice(0, 1 + runnersUp);
      expect(
        few.slice(0, wanted.length).map(({ form, tonic, cost }) => [form.id, tonic, cost]),
      ).toEqual(wanted);
    }
  });

  test('rankForms on one tonic looks at no other', () => {
    const ranked = rankForms(G_BLUES, { ...ALL, tonics: [7] });
    expect(ranked.length).toBe(FORMS.length);
    expect(ranked[0]).toMatchObject({ form: { id: 'basic' }, tonic: 7, cost: 0, choruses: 1 });
  });

  test.each([
    [11, 1],
    [12, 1],
    [13, 1],
    [18, 1],
    [23, 2],
    [25, 2],
    [36, 3],
  ])('rankForms of %d bars of a twelve-bar form finds %d choruses', (length, choruses) => {
    const form = formById('basic');
    const given = Array.from({ length }, (_, at) => form.bars[at % 12] ?? []);
    const [best] = rankForms(given, { ...ALL, forms: [form], tonics: [0] });
    expect(best?.choruses).toBe(choruses);
    expect(best?.cost).toBe(Math.abs(length - choruses * 12));
  });

  test('an alignment asked for costs what its candidate costs', () => {
    const given = barsOf('G7 | C7 | G7 | Ab7 | C7 | G7 | % | D9 | C7 | G7');
    for (const { cost, align } of rankForms(given, ALL).slice(0, 60)) {
      expect(align().reduce((sum, pair) => sum + pair.cost, 0)).toBeCloseTo(cost, 6);
    }
  });

  test('rankForms on equal cost keeps the order of the forms', () => {
    const [first, second] = [formById('basic'), formById('quick-change')];
    const given = barsOf('C7 | C7 F7 | C7 | % | F7 | % | C7 | % | G7 | F7 | C7 | G7');
    const order = (forms: typeof FORMS) =>
      rankForms(given, { forms, tonics: [0], runnersUp: 1, closings: false }).map(
        ({ form }) => form.id,
      );
    expect(order([first, second])).toEqual(['basic', 'quick-change']);
    expect(order([second, first])).toEqual(['quick-change', 'basic']);
  });
});
