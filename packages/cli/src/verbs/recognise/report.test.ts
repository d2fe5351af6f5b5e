import { FORMS, makeChart, recogniseForm } from '@reedplate/form';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { keys } from '../../shared/arbitraries.fixture.js';
import { recogniseReport } from './report.js';

// A busy machine takes its time over twenty recognitions.
vi.setConfig({ testTimeout: 60_000 });

const forms = fc.constantFrom(...FORMS.filter(({ bars }) => bars.length >= 8));

/** The chords of a form in a key, as a player would write them down. */
function writtenDown(form: (typeof FORMS)[number], key: { readonly tonic: string }): string {
  const { spans, bars } = makeChart(form, key.tonic as 'C');
  return Array.from({ length: bars }, (_, index) =>
    spans
      .filter(({ bar }) => bar === index + 1)
      .map(({ chord }) => chord?.symbol ?? 'N.C.')
      .join(' '),
  ).join(' | ');
}

describe('recogniseReport', () => {
  test('recogniseReport finds every form of the catalogue in the key it was written down in', () => {
    fc.assert(
      fc.property(forms, keys, (form, key) => {
        const { best, near } = recogniseReport(writtenDown(form, key));
        expect(near).toBe(true);
        expect(best.map((match) => match.form)).toContain(form.id);
      }),
      { numRuns: 20 },
    );
  });

  test('recogniseReport says in words what its data say', () => {
    fc.assert(
      fc.property(forms, keys, (form, key) => {
        const { best, tie, verdict } = recogniseReport(writtenDown(form, key));
        const names = best.map((match) => `${match.form} in ${match.key}`);
        for (const name of names) expect(verdict).toContain(name);
        expect(verdict.startsWith('a tie')).toBe(tie);
      }),
      { numRuns: 20 },
    );
  });

  test('recogniseReport adds nothing but words to what recogniseForm finds', () => {
    const bars = 'G7 | C7 | G7 | % | C7 | % | G7 | % | D7 | C7 | G7 | D7';
    const { verdict, ...found } = recogniseReport(bars);
    expect(found).toEqual(recogniseForm(bars));
    expect(verdict).toBe('quick-change in G, bar for bar');
  });

  test('recogniseReport says how far the nearest agrees where a bar differs', () => {
    const { verdict } = recogniseReport('G7 | % | Ab7 | G7 | C7 | % | G7 | % | D7 | C7 | G7 | D7', {
      key: 'G',
    });
    expect(verdict).toBe('nearest to basic in G: 92 % of the bars agree');
  });

  test('recogniseReport says where nothing is near', () => {
    const { near, verdict } = recogniseReport('Cmaj7 | F#m7 | Ebmaj7 | Am7 | Dbmaj7 | Gm7');
    expect([near, verdict]).toEqual([false, 'near no form of the catalogue']);
  });
});
