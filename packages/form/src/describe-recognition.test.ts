import { TWELVE_KEYS } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FORMS } from './catalogue.js';
import { describeRecognition } from './describe-recognition.js';
import { makeChart } from './make-chart.js';
import { recogniseForm } from './recognise-form.js';

const keys = fc.constantFrom(...TWELVE_KEYS);

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

describe('describeRecognition', () => {
  test('describeRecognition says in words what the recognition has', () => {
    fc.assert(
      fc.property(forms, keys, (form, key) => {
        const found = recogniseForm(writtenDown(form, key));
        const verdict = describeRecognition(found);
        expect(found.best.map((match) => match.form)).toContain(form.id);
        for (const { name, key: home, closing } of found.best) {
          expect(verdict).toContain(`${name} in ${home}`);
          if (closing !== null) expect(verdict).toContain(`ending in ${closing}`);
        }
        expect(verdict.startsWith('a tie')).toBe(found.tie);
      }),
      { numRuns: 20 },
    );
  });

  test('describeRecognition says where every bar agrees', () => {
    const bars = 'G7 | C7 | G7 | % | C7 | % | G7 | % | D7 | C7 | G7 | D7';
    expect(describeRecognition(recogniseForm(bars))).toBe(
      'Quick-change twelve-bar in G, bar for bar',
    );
  });

  test('describeRecognition says how far the nearest agrees where a bar differs', () => {
    const bars = 'G7 | % | Ab7 | G7 | C7 | % | G7 | % | D7 | C7 | G7 | D7';
    expect(describeRecognition(recogniseForm(bars, { key: 'G' }))).toBe(
      'nearest to Basic twelve-bar in G: 92 % of the bars agree',
    );
  });

  test('describeRecognition says where nothing is near', () => {
    const found = recogniseForm('Cmaj7 | F#m7 | Ebmaj7 | Am7 | Dbmaj7 | Gm7');
    expect(describeRecognition(found)).toBe('near no form of the catalogue');
  });
});
