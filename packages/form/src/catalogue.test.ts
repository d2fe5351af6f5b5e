import { parseNumeral } from '@reedplate/pitch';
import { describe, expect, test } from 'vitest';
import { FORMS } from './catalogue.js';
import { ENDINGS } from './endings.js';
import { formById } from './form-by-id.js';
import type { FormRow } from './form-row.js';
import { formatForm } from './format-form.js';
import { FORM_ROWS } from './forms.js';
import { parseForm } from './parse-form.js';
import { TURNAROUNDS } from './turnarounds.js';
import { sameBars } from './vary.js';

describe('FORMS', () => {
  test('FORMS holds at least thirty forms, each with its own id and name', () => {
    expect(FORMS.length).toBeGreaterThanOrEqual(30);
    expect(new Set(FORMS.map(({ id }) => id)).size).toBe(FORMS.length);
    expect(new Set(FORMS.map(({ name }) => name)).size).toBe(FORMS.length);
  });

  test('FORMS describes each form, its use and its source', () => {
    for (const { description, use, source } of FORMS) {
      expect(description).toMatch(/\.$/u);
      expect(use).toMatch(/\.$/u);
      expect(source).not.toBe('not stated');
    }
  });

  test('FORMS holds no two forms with the same chords', () => {
    for (const [index, form] of FORMS.entries()) {
      const twins = FORMS.slice(index + 1).filter((other) => sameBars(form.bars, other.bars));
      expect(twins).toEqual([]);
    }
  });

  test('FORMS has the lengths a blues band knows', () => {
    const lengths = new Map<number, number>();
    for (const { bars } of FORMS) lengths.set(bars.length, (lengths.get(bars.length) ?? 0) + 1);
    expect(lengths.get(8)).toBeGreaterThanOrEqual(5);
    expect(lengths.get(16)).toBeGreaterThanOrEqual(4);
    expect([...lengths.keys()]).toEqual(expect.arrayContaining([4, 10, 11, 12, 24, 44]));
  });

  test('FORMS has every feel and the metres of the blues', () => {
    expect(new Set(FORMS.map(({ feel }) => feel))).toEqual(
      new Set(['shuffle', 'straight', 'slow-12/8']),
    );
    expect(new Set(FORMS.map(({ metre }) => metre))).toEqual(
      new Set(['4/4', '12/8', '6/8', '3/4']),
    );
  });

  test('FORMS begins on the tonic in the mode that the form says, but for a form cut at its front', () => {
    for (const { id, mode, bars } of FORMS) {
      if (id === 'eight-bar-last-eight') continue;
      const numeral = parseNumeral(bars[0]?.[0]?.numeral ?? '');
      expect(numeral.semitones).toBe(0);
      expect(numeral.text.startsWith('i')).toBe(mode === 'minor');
    }
  });

  test('FORMS is frozen to the last chord', () => {
    expect(Object.isFrozen(FORMS)).toBe(true);
    expect(Object.isFrozen(FORMS[0]?.bars[0]?.[0])).toBe(true);
  });

  test('FORMS survives JSON', () => {
    expect(JSON.parse(JSON.stringify(FORMS))).toEqual(FORMS);
  });
});

describe('formById', () => {
  test('formById finds each form of the catalogue', () => {
    for (const form of FORMS) expect(formById(form.id)).toBe(form);
  });

  test('formById names the nearest id for a slip of the finger', () => {
    expect(() => formById('quik-change')).toThrow(
      expect.objectContaining({ code: 'FORM_UNKNOWN', nearest: 'quick-change' }),
    );
  });

  test.each(['', 'valueOf', '__proto__', 'constructor'])('formById refuses %j', (id) => {
    expect(() => formById(id)).toThrow(expect.objectContaining({ code: 'FORM_UNKNOWN' }));
  });
});

describe('FORM_ROWS', () => {
  const rows: readonly FormRow[] = FORM_ROWS;
  test.each(rows.map((row) => ({ id: row[0], row })))(
    'parseForm reads the row $id to the form of the catalogue',
    ({ row }) => {
      const [id, name, description, use, source, bars, unlike] = row;
      const { mode: _, ...unlikeMost } = unlike ?? {};
      const words = { id, name, description, use, source };
      expect(parseForm(bars, { ...words, ...unlikeMost })).toEqual(formById(id));
    },
  );
});

test('the catalogue changes only on purpose: every form, turnaround and ending, written out', async () => {
  const forms = FORMS.map((form) => `${form.id} (${form.mode})\n${formatForm(form)}\n`);
  const closings = [...TURNAROUNDS, ...ENDINGS].map(({ id, mode, bars }) => {
    const text = formatForm({ ...formById('vamp'), bars });
    return `${id} (${mode}) ${text}`;
  });
  const listing = `${[...forms, ...closings].join('\n')}\n`;
  await expect(listing).toMatchFileSnapshot('catalogue.golden.txt');
});
