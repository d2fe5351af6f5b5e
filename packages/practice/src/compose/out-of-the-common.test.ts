import { makeChart, parseForm } from '@reedplate/form';
import { makePlayer } from '@reedplate/layout';
import { describe, expect, test } from 'vitest';
import { composeLine } from './compose-line.js';
import { DEFAULT_MELODY_MODEL } from './melody-model.js';

const CHART = makeChart('basic', 'G');

describe('composeLine on charts, models and players out of the common', () => {
  test('in a break any note may come, and has no chord', () => {
    const chart = makeChart(parseForm('I7 | N.C. | I7 | % | I7 | N.C. | I7 | %'), 'G');
    const { steps } = composeLine(chart, 'C', { plan: 'AA' });
    const inBreak = steps.filter(({ bar }) => bar === 2 || bar === 6);
    expect(inBreak.length).toBeGreaterThan(3);
    for (const { chord, degree } of inBreak) expect([chord, degree]).toEqual([null, null]);
    for (const { bar, chord } of steps) {
      if (bar !== 2 && bar !== 6) expect(chord?.symbol).toBe('G7');
    }
    // The same chords, the break among them: note for note.
    const half = (from: number) =>
      steps
        .filter(({ bar }) => bar > from && bar <= from + 4)
        .map(({ bar, beat, sounding }) => [bar - from, beat, sounding]);
    expect(half(4)).toEqual(half(0));
  });

  test('a model that leaps no wider than two semitones gives lines by step', () => {
    const leaps = [1, 1, 1, 0];
    const { steps } = composeLine(CHART, 'C', { model: { ...DEFAULT_MELODY_MODEL, leaps } });
    for (const letter of ['A', 'B']) {
      const bars = letter === 'A' ? [1, 4] : [9, 12];
      const phrase = steps.filter(({ bar }) => bar >= (bars[0] ?? 0) && bar <= (bars[1] ?? 0));
      const moves = phrase
        .slice(1)
        .map((step, at) => Math.abs(step.sounding.pitch - (phrase[at]?.sounding.pitch ?? 0)));
      expect(Math.max(...moves)).toBeLessThanOrEqual(2);
    }
  });

  test('a form whose bars no letters divide is one phrase', () => {
    const bars = Array.from({ length: 29 }, () => 'I7').join(' | ');
    const { steps } = composeLine(makeChart(parseForm(bars), 'G'), 'C');
    expect(new Set(steps.map(({ phrase }) => phrase))).toEqual(new Set(['A']));
    expect(steps.at(-1)?.bar).toBeGreaterThan(27);
  });

  test('however few notes are asked for, a phrase has one', () => {
    const sparse = {
      cells: [
        { notes: [], weight: 50 },
        { notes: [[0, 1]], weight: 1 },
      ],
    } as const;
    for (let seed = 0; seed < 20; seed += 1) {
      const { steps } = composeLine(CHART, 'C', {
        ...sparse,
        seed,
        density: { fewest: 0, most: 4 },
        changes: false,
      });
      const phrases = new Set(steps.map(({ bar }) => Math.ceil(bar / 4)));
      expect(phrases).toEqual(new Set([1, 2, 3]));
    }
  });

  test.each([
    ['a range in which the harp has nothing', { lowest: 126 }, 'range cannot hold'],
    [
      'a player who has nothing on the harp',
      { level: makePlayer([{ technique: 'valved-bend' }]) },
      'level cannot hold',
    ],
  ])('says what cannot hold by itself: %s', (_, options, said) => {
    expect(() => composeLine(CHART, 'C', options)).toThrow(
      expect.objectContaining({
        code: 'COMPOSE_IMPOSSIBLE',
        value: 'basic',
        expected: `other constraints: in phrase A ${said}`,
      }),
    );
  });
});
