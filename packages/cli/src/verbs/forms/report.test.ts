import { ENDINGS, FORMS, type FormId, formById, parseForm, TURNAROUNDS } from '@reedplate/form';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formsReport } from './report.js';

const ids = fc.constantFrom(...FORMS.map(({ id }) => id as FormId));

describe('formsReport', () => {
  test('formsReport tells of all forms, turnarounds and endings, in the order of the catalogue', () => {
    const { forms, turnarounds, endings } = formsReport();
    expect(forms.map(({ id }) => id)).toEqual(FORMS.map(({ id }) => id));
    expect(turnarounds.map(({ id }) => id)).toEqual(TURNAROUNDS.map(({ id }) => id));
    expect(endings.map(({ id }) => id)).toEqual(ENDINGS.map(({ id }) => id));
  });

  test('formsReport writes bars that parseForm reads back', () => {
    fc.assert(
      fc.property(ids, (id) => {
        const [told] = formsReport({ id }).forms;
        const form = formById(id);
        expect(parseForm(told?.bars ?? '').bars).toEqual(form.bars);
        expect(told?.length).toBe(form.bars.length);
      }),
    );
  });

  test('formsReport writes two bars for every turnaround and ending', () => {
    const { turnarounds, endings } = formsReport();
    for (const { bars } of [...turnarounds, ...endings]) {
      expect(parseForm(bars).bars).toHaveLength(2);
    }
  });

  test.each(['major', 'minor'] as const)('formsReport narrows all three to %s', (mode) => {
    const { forms, turnarounds, endings } = formsReport({ mode });
    expect(forms.length).toBe(FORMS.filter((form) => form.mode === mode).length);
    expect(turnarounds.length).toBe(TURNAROUNDS.filter((bars) => bars.mode === mode).length);
    expect(endings.length).toBe(ENDINGS.filter((bars) => bars.mode === mode).length);
    for (const entry of [...forms, ...turnarounds, ...endings]) expect(entry.mode).toBe(mode);
  });

  test('formsReport narrows to a length, and then tells of forms alone', () => {
    for (const length of new Set(FORMS.map(({ bars }) => bars.length))) {
      const { forms, turnarounds, endings } = formsReport({ length });
      expect(forms.length).toBeGreaterThan(0);
      for (const form of forms) expect(form.length).toBe(length);
      expect([turnarounds, endings]).toEqual([[], []]);
    }
    expect(formsReport({ length: 7 }).forms).toEqual([]);
  });

  test('formsReport names a source for each entry', () => {
    const { forms, turnarounds, endings } = formsReport();
    for (const { source } of [...forms, ...turnarounds, ...endings]) {
      expect(source.length).toBeGreaterThan(5);
    }
  });

  test('formsReport refuses an id that is not there, and says which is near', () => {
    expect(() => formsReport({ id: 'quick-chnage' })).toThrow(
      expect.objectContaining({ code: 'FORM_UNKNOWN', nearest: 'quick-change' }),
    );
  });
});
