import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv } from 'ajv';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formsOf, metres, tonics } from './arbitraries.js';
import { FORMS } from './catalogue.js';
import { formById } from './form-by-id.js';
import { makeChart } from './make-chart.js';
import { recogniseForm } from './recognise-form.js';

function validator(name: string) {
  const file = fileURLToPath(new URL(`../schemas/${name}.json`, import.meta.url));
  return new Ajv({ strict: true, allowUnionTypes: true }).compile(
    JSON.parse(readFileSync(file, 'utf8')),
  );
}

describe('the schemas of form', () => {
  test('form.json describes the catalogue and any form', () => {
    const isForm = validator('form');
    for (const form of FORMS) expect(isForm(form), JSON.stringify(isForm.errors)).toBe(true);
    fc.assert(fc.property(formsOf(), (form) => isForm(form)));
    expect(isForm({ ...formById('basic'), bars: [[{ numeral: 'I7', weight: 0 }]] })).toBe(false);
    expect(isForm({ ...formById('basic'), bars: [[{ numeral: 'I7', weight: 1.5 }]] })).toBe(false);
  });

  test('chart.json describes any chart', () => {
    const isChart = validator('chart');
    const whole = { intro: 'from-the-five', pickup: 960, tempo: 90, choruses: 2 } as const;
    const chart = makeChart('jazz', 'G', whole);
    expect(isChart(chart), JSON.stringify(isChart.errors)).toBe(true);
    fc.assert(
      fc.property(formsOf(), tonics, metres, (form, tonic, metre) => {
        const key = form.mode === 'minor' ? (`${tonic}m` as const) : tonic;
        return isChart(makeChart(form, key, { metre }));
      }),
    );
    expect(isChart({ ...chart, pickup: -1 })).toBe(false);
    expect(isChart({ ...chart, spans: [{ ...chart.spans[0], start: 0.5 }] })).toBe(false);
  });

  test('recognition.json describes what recogniseForm gives', () => {
    const isRecognition = validator('recognition');
    for (const bars of ['G7 | C7 | G7', 'G7 | Db7', 'A7 | '.repeat(13)]) {
      const recognition = recogniseForm(bars);
      expect(isRecognition(recognition), JSON.stringify(isRecognition.errors)).toBe(true);
      expect(isRecognition({ ...recognition, confidence: 2 })).toBe(false);
    }
  });
});
