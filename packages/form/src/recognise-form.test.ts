import { parseKey, TONICS, type Tonic, TWELVE_KEYS } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { FORMS } from './catalogue.js';
import { closeForm } from './closing-bars.js';
import { ENDINGS, withEnding } from './endings.js';
import { formById } from './form-by-id.js';
import { formatForm } from './format-form.js';
import { makeForm } from './make-form.js';
import { recogniseForm } from './recognise-form.js';
import { LEAST_FORM_AGREEMENT } from './recognition-weights.js';
import { TURNAROUNDS } from './turnarounds.js';
import type { Form } from './types.js';

// A busy machine takes its time over hundreds of recognitions.
vi.setConfig({ testTimeout: 60_000 });

const BASIC_IN_G = 'G7 | % | % | % | C7 | % | G7 | % | D7 | C7 | G7 | D7';
const named = ({ best }: ReturnType<typeof recogniseForm>) =>
  best.map(({ form, key }) => `${form} in ${key}`);
const inKey = (form: Form, tonic: Tonic) =>
  formatForm(form, { key: tonic }).replace(/^[a-z].*\n/u, '');

describe('recogniseForm', () => {
  test('recogniseForm names form and key, sure where nothing else is as near', () => {
    const { best, tie, confidence, others } = recogniseForm(BASIC_IN_G);
    expect(best).toEqual([
      {
        form: 'basic',
        name: 'Basic twelve-bar',
        closing: null,
        key: 'G',
        choruses: 1,
        cost: 0,
        agreement: 1,
        differences: [],
      },
    ]);
    expect({ tie, confidence }).toEqual({ tie: false, confidence: 1 });
    expect(others.length).toBe(3);
    expect(others[0]?.cost).toBeGreaterThan(0);
  });

  test('recogniseForm takes bars as a list', () => {
    const bars = ['G7', 'C7', 'G7', '%', 'C7', '%', 'G7', '%', 'D7', 'C7', 'G7 B7', 'D7 F7'];
    const recognition = recogniseForm(bars, { forms: [formById('quick-change')] });
    expect(named(recognition)).toEqual(['quick-change in G']);
    expect(recognition.best[0]?.differences).toEqual([
      { kind: 'root', bar: 11, barOfForm: 11, given: 'G7 B7', expected: 'G7', cost: 0.5 },
      { kind: 'root', bar: 12, barOfForm: 12, given: 'D7 F7', expected: 'D7', cost: 0.5 },
    ]);
  });

  test.each([...TURNAROUNDS, ...ENDINGS].map(({ id, mode }) => ({ id, mode })))(
    'recogniseForm knows the quick change by its closing $id',
    ({ id, mode }) => {
      const form = formById(mode === 'minor' ? 'minor-quick-change' : 'quick-change');
      const closed = closeForm(form, id, [...TURNAROUNDS, ...ENDINGS]);
      const { best, tie, confidence } = recogniseForm(inKey(closed, 'A'));
      expect(best).toMatchObject([{ cost: 0, differences: [] }]);
      expect({ tie, confidence }).toEqual({ tie: false, confidence: 1 });
      // Four closings are those of forms of the catalogue, which they are then called by.
      if (best[0]?.closing !== null) expect(best[0]).toMatchObject({ form: form.id, closing: id });
      else expect(best[0]?.form).toMatch(/quick-change/u);
    },
  );

  test('recogniseForm knows an ending in the last of several choruses', () => {
    const [chorus, last] = [
      formById('quick-change'),
      withEnding(formById('quick-change'), 'four-one'),
    ];
    const { best } = recogniseForm(`${inKey(chorus, 'G')}\n${inKey(last, 'G')}`);
    expect(best).toMatchObject([
      { form: 'quick-change', closing: 'four-one', choruses: 2, cost: 0 },
    ]);
  });

  test('recogniseForm knows the common eight bars with V in bar 2 and a turnaround', () => {
    const { best, confidence } = recogniseForm('C | G | F | F | C | G | C F | C G');
    expect(best).toMatchObject([{ form: 'eight-bar-five-second-turnaround', cost: 0 }]);
    expect(confidence).toBe(1);
  });

  test('recogniseForm is sure of a key where it is not sure of the form', () => {
    const played = BASIC_IN_G.replace('G7 | %', 'G7 | G7 C7').replace('C7 | % | %', 'C7 | G7 | %');
    const { confidence, formConfidence, keyConfidence } = recogniseForm(played);
    expect({ confidence, formConfidence }).toEqual({ confidence: 0, formConfidence: 0 });
    expect(keyConfidence).toBeGreaterThan(0.6);
    const told = recogniseForm(BASIC_IN_G, { key: 'G' });
    expect(told.keyConfidence).toBe(1);
  });

  test('recogniseForm tells another quality from another root', () => {
    const played = BASIC_IN_G.replace('D7 | C7', 'D9 | Cm7');
    expect(recogniseForm(played).best[0]?.differences).toEqual([
      { kind: 'quality', bar: 9, barOfForm: 9, given: 'D9', expected: 'D7', cost: 0.1 },
      { kind: 'quality', bar: 10, barOfForm: 10, given: 'Cm7', expected: 'C7', cost: 0.5 },
    ]);
  });

  test('recogniseForm sets a major seventh against a minor one, and a break against a chord', () => {
    const played = BASIC_IN_G.replace('G7 | %', 'Gmaj7 | N.C.');
    const costs = recogniseForm(played, { forms: [formById('basic')] }).best[0]?.differences;
    expect(costs?.map(({ kind, cost }) => [kind, cost])).toEqual([
      ['quality', 0.25],
      ['quality', 0.25],
      ['quality', 0.25],
      ['quality', 0.25],
    ]);
  });

  test('recogniseForm finds an extra bar and a missing one', () => {
    const extra = recogniseForm(`${BASIC_IN_G} | D7`, { forms: [formById('basic')] });
    expect(extra.best[0]?.differences).toEqual([
      { kind: 'extra', bar: 12, barOfForm: null, given: 'D7', expected: null, cost: 1 },
    ]);
    const missing = recogniseForm('G7 | C7 | D7', {
      forms: [makeForm(formById('basic').bars.slice(3))],
    });
    expect(missing.best[0]?.differences.filter(({ kind }) => kind === 'missing').length).toBe(6);
    expect(missing.best[0]?.differences[0]).toMatchObject({ bar: null, given: null, cost: 1 });
  });

  test('recogniseForm counts choruses', () => {
    expect(recogniseForm(`${BASIC_IN_G} | ${BASIC_IN_G}`).best[0]).toMatchObject({
      form: 'basic',
      choruses: 2,
      cost: 0,
    });
  });

  test('recogniseForm reports a tie as a tie', () => {
    // Half of bar 2 is I and half is IV: just between the basic form and the quick change.
    const played = BASIC_IN_G.replace('G7 | %', 'G7 | G7 C7').replace('C7 | % | %', 'C7 | G7 | %');
    const recognition = recogniseForm(played);
    expect(named(recognition)).toEqual(['basic in G', 'quick-change in G']);
    expect(recognition).toMatchObject({ tie: true, confidence: 0 });
  });

  test('recogniseForm spells the key as the chords are spelled, or as it is given', () => {
    expect(named(recogniseForm('C#7 | F#7 | C#7 | G#7'))[0]).toMatch(/in C#$/u);
    expect(named(recogniseForm('Db7 | % | % | %'))).toEqual(['vamp in Db']);
    expect(named(recogniseForm('Db7 | % | % | %', { key: 'C#' }))).toEqual(['vamp in C#']);
  });

  test('recogniseForm with the key known compares in that key only', () => {
    const { best, others } = recogniseForm(BASIC_IN_G, { key: 'D', runnersUp: 100 });
    expect([...best, ...others].map(({ key }) => key.replace(/m$/u, ''))).toEqual(
      [...best, ...others].map(() => 'D'),
    );
    expect(best[0]?.cost).toBeGreaterThan(3);
  });

  test('recogniseForm chooses from forms of the caller’s own', () => {
    const own = makeForm([[{ numeral: 'I7', weight: 1 }], [{ numeral: 'bIII7', weight: 1 }]], {
      id: 'own-riff',
    });
    expect(named(recogniseForm('A7 | C7 | A7 | C7', { forms: [own] }))).toEqual(['own-riff in A']);
  });

  test('recogniseForm is not sure of what is no blues', () => {
    const { confidence, best } = recogniseForm('Cmaj7 | Am7 | Dm7 | G7 | Em7 | A7 | Fm7 | Bb7');
    expect(best[0]?.agreement).toBeLessThan(0.6);
    expect(confidence).toBe(0);
  });

  test.each([['C | G | Am | F'], ['G7'], ['C | Am | F | G | C | Am | F | G']])(
    'recogniseForm says that no form is near %s, and still ranks',
    (bars) => {
      const { near, confidence, best, others } = recogniseForm(bars);
      expect({ near, confidence }).toEqual({ near: false, confidence: 0 });
      expect(best.length).toBeGreaterThan(0);
      expect(others[0]?.cost).toBeGreaterThan(best[0]?.cost ?? Number.POSITIVE_INFINITY);
    },
  );

  test('recogniseForm calls a form near from the least agreement on', () => {
    const forms = [makeForm(Array.from({ length: 5 }, () => [{ numeral: 'I7', weight: 1 }]))];
    const agreeing = (bars: string) => {
      const { near, best } = recogniseForm(bars, { forms, key: 'C' });
      return [near, best[0]?.agreement];
    };
    expect(agreeing('C7 | C7 | C7 | F7 | F7')).toEqual([true, LEAST_FORM_AGREEMENT]);
    expect(agreeing('C7 | C7 | F7 | F7 | F7')).toEqual([false, 0.4]);
  });

  test('recogniseForm calls a tie near, though it is sure of neither', () => {
    const played = BASIC_IN_G.replace('G7 | %', 'G7 | G7 C7').replace('C7 | % | %', 'C7 | G7 | %');
    expect(recogniseForm(played)).toMatchObject({ near: true, tie: true, confidence: 0 });
  });

  test('recogniseForm is sure where there is only one candidate', () => {
    const only = { forms: [formById('basic')], key: 'G' } as const;
    expect(recogniseForm(BASIC_IN_G, only).confidence).toBe(1);
    expect(recogniseForm(BASIC_IN_G, { ...only, runnersUp: 0 }).others).toEqual([]);
  });

  test('recogniseForm is as sure however many runners-up are named', () => {
    const played = BASIC_IN_G.replace('D7 | C7', 'D9 | Cm7');
    const sure = [0, 1, 3, 50].map((runnersUp) => recogniseForm(played, { runnersUp }).confidence);
    expect(new Set(sure).size).toBe(1);
    expect(sure[0]).toBeGreaterThan(0);
    expect(sure[0]).toBeLessThan(1);
  });

  test('recogniseForm gives frozen JSON', () => {
    const recognition = recogniseForm(BASIC_IN_G.replace('D7', 'D9'));
    expect(JSON.parse(JSON.stringify(recognition))).toEqual(recognition);
    expect(Object.isFrozen(recognition.best[0]?.differences[0])).toBe(true);
  });

  test.each([
    ['G7 | x', {}, 'FORM_SYNTAX'],
    ['', {}, 'FORM_SYNTAX'],
    ['N.C. | N.C.', {}, 'FORM_INVALID'],
    ['G7 | '.repeat(241), {}, 'FORM_INVALID'],
    ['G7', { forms: [] }, 'FORM_INVALID'],
    ['G7', { key: 'H' as 'B' }, 'KEY_UNKNOWN'],
    ['G7', { runnersUp: -1 }, 'NUMBER_RANGE'],
  ])('recogniseForm refuses %j with %j: %s', (bars, options, code) => {
    expect(() => recogniseForm(bars, options)).toThrow(expect.objectContaining({ code }));
  });
});

describe('recogniseForm on the catalogue', () => {
  // Each form on a few of the eighteen tonics, other ones for the next form: all of them together are tried often.
  const tonicsAt = (index: number, steps: readonly number[]) =>
    steps.map((step) => TONICS[(index + step) % TONICS.length] ?? 'C');

  test.each(FORMS.map((form, index) => ({ form, index, id: form.id })))(
    'recogniseForm knows $id in a key, told which',
    ({ form, index }) => {
      for (const tonic of tonicsAt(index, [0, 9])) {
        const { best } = recogniseForm(inKey(form, tonic), { key: tonic });
        expect(best).toMatchObject([{ form: form.id, cost: 0 }]);
        expect(parseKey(best[0]?.key ?? 'H')).toMatchObject({ tonic, mode: form.mode });
      }
    },
  );

  test.each(FORMS.map((form, index) => ({ form, index, id: form.id })))(
    'recogniseForm knows $id without being told the key',
    ({ form, index }) => {
      for (const tonic of tonicsAt(index, [0, 7, 12])) {
        const { best, confidence } = recogniseForm(inKey(form, tonic));
        expect(best).toMatchObject([{ form: form.id, cost: 0, differences: [] }]);
        const { pitchClass } = parseKey(tonic);
        expect(parseKey(best[0]?.key ?? 'H')).toMatchObject({ pitchClass, mode: form.mode });
        expect(confidence).toBe(1);
      }
    },
  );

  test.each(FORMS)('recogniseForm knows $id with a bar that no form has', (form) => {
    const strange = [{ numeral: 'VIImaj7', weight: 1 }];
    for (const index of [Math.floor(form.bars.length / 2), form.bars.length - 1]) {
      const bars = form.bars.map((bar, at) => (at === index ? strange : bar));
      const { best } = recogniseForm(inKey(makeForm(bars), 'E'));
      const found = best.find((match) => match.form === form.id && /^Em?$/u.test(match.key));
      expect(found?.cost, `${form.id} with bar ${index + 1} changed`).toBeLessThanOrEqual(1);
    }
  });

  test('recogniseForm with any one bar changed finds the form, or one at least as near', () => {
    const chords = fc.constantFrom(
      'I7',
      'IV7',
      'V7',
      'i7',
      'ii7',
      'bVI7',
      'VI7',
      'I',
      'V',
      '#ivdim7',
    );
    const places = fc.nat();
    fc.assert(
      fc.property(
        fc.constantFrom(...FORMS),
        places,
        chords,
        fc.constantFrom(...TWELVE_KEYS),
        (form, place, numeral, key) => {
          const changed = place % form.bars.length;
          const bars = form.bars.map((bar, at) =>
            at === changed ? [{ numeral, weight: 1 }] : bar,
          );
          const { best, others } = recogniseForm(inKey(makeForm(bars), key.tonic), {
            runnersUp: 100,
          });
          const found = [...best, ...others].find(
            (match) => match.form === form.id && parseKey(match.key).pitchClass === key.pitchClass,
          );
          expect(found?.cost).toBeLessThanOrEqual(1);
          expect(best[0]?.cost).toBeLessThanOrEqual(found?.cost ?? 0);
          const isOtherForm = best.every((match) => match.form !== form.id);
          if (isOtherForm) expect(best[0]?.cost).toBeLessThan(found?.cost ?? 0);
        },
      ),
      { numRuns: 30 },
    );
  }, 60_000);
});
