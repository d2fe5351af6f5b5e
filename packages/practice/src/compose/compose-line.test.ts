import { FORMS, makeChart, parseForm } from '@reedplate/form';
import { makeHarp, makePlayer, TECHNIQUE_LEVELS } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { TWELVE_KEYS, toPitchClass } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { brokenIn } from './broken-in.fixture.js';
import { type ComposedLine, composeLine } from './compose-line.js';
import type { ComposeOptions } from './compose-options.js';
import { learnMelody } from './learn-melody.js';
import { DEFAULT_MELODY_MODEL } from './melody-model.js';

const CHART = makeChart('quick-change', 'G');
describe('composeLine', () => {
  test('keeps what must hold, for any seed, key, level and bounds', () => {
    fc.assert(
      fc.property(
        fc.record({
          seed: fc.integer(),
          leap: fc.integer({ min: 5, max: 12 }),
          resolve: fc.integer({ min: 1, max: 3 }),
        }),
        fc.constantFrom(...TWELVE_KEYS),
        fc.constantFrom(...TECHNIQUE_LEVELS),
        (options, key, level) => {
          const chart = makeChart('quick-change', key.tonic);
          const line = composeLine(chart, makeHarp(key.tonic), { ...options, level });
          expect(brokenIn(line, chart, options)).toEqual([]);
        },
      ),
      { numRuns: 60 },
    );
  });

  const barsFrom = ({ steps }: ComposedLine, from: number) =>
    steps
      .filter(({ bar }) => bar >= from && bar < from + 4)
      .map(({ bar, beat, duration, sounding }) => [bar - from, beat, duration, sounding] as const);

  test('repeats a phrase note for note where its chords come again', () => {
    const chart = makeChart(parseForm('I7 | % | % | % | I7 | % | % | % | V7 | IV7 | I7 | %'), 'G');
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const line = composeLine(chart, 'C', { seed });
        expect(barsFrom(line, 1).length).toBeGreaterThan(5);
        expect(barsFrom(line, 5)).toEqual(barsFrom(line, 1));
        expect(barsFrom(line, 9)).not.toEqual(barsFrom(line, 1));
      }),
      { numRuns: 30 },
    );
  });

  test('over other chords the phrase of a letter keeps its rhythm, and moves few notes and little', () => {
    const lines = Array.from({ length: 60 }, (_, seed) => composeLine(CHART, 'C', { seed }));
    const moved = lines.flatMap((line) => {
      const [first, again] = [barsFrom(line, 1), barsFrom(line, 5)];
      expect(again.map(([bar, beat, duration]) => [bar, beat, duration])).toEqual(
        first.map(([bar, beat, duration]) => [bar, beat, duration]),
      );
      return first.map(([, , , { pitch }], at) => Math.abs(pitch - (again[at]?.[3].pitch ?? 0)));
    });
    expect(Math.max(...moved)).toBeLessThanOrEqual(5);
    expect(moved.filter((by) => by === 0).length / moved.length).toBeGreaterThan(1 / 2);
  });

  test.each([
    ['G', undefined, '3 blow'],
    ['C', undefined, '2 draw'],
    ['G', makePlayer(['natural'], { holdsTwoDraw: false }), '2 draw'],
  ] as const)('in %s one note has one place: with player %j never %s', (key, level, never) => {
    const chart = makeChart('quick-change', key);
    const lines = Array.from({ length: 20 }, (_, seed) =>
      composeLine(chart, 'C', { seed, ...(level && { level }) }),
    );
    const places = lines.flatMap(({ steps }) =>
      steps
        .filter(({ sounding }) => sounding.pitch === 67)
        .map(({ sounding: { hole, breath } }) => `${hole} ${breath}`),
    );
    expect(places.length).toBeGreaterThan(20);
    expect(places).not.toContain(never);
  });

  test('draws another melody for each chorus, by the same plan', () => {
    const { steps } = composeLine(makeChart('basic', 'G', { choruses: 2 }), 'C', { seed: 2 });
    const notes = (from: number) =>
      steps
        .filter(({ bar }) => bar > from && bar <= from + 12)
        .map(({ sounding }) => sounding.pitch);
    expect(notes(0)).not.toEqual(notes(12));
    expect(notes(12).length).toBeGreaterThan(10);
  });

  test('gives the same line for the same seed, and others for others', () => {
    const lines = [1, 2, 3, 4].map((seed) => composeLine(CHART, 'C', { seed }));
    expect(composeLine(CHART, 'C', { seed: 3 })).toEqual(lines[2]);
    expect(new Set(lines.map((line) => JSON.stringify(line.steps))).size).toBe(4);
  });

  test('moves with the key of song and harp together: the same holes', () => {
    fc.assert(
      fc.property(fc.integer(), fc.constantFrom('A', 'Bb', 'D', 'E'), (seed, key) => {
        const harp = { A: 'D', Bb: 'Eb', D: 'G', E: 'A' }[key];
        const here = composeLine(CHART, 'C', { seed }).steps;
        const there = composeLine(makeChart('quick-change', key), harp, { seed }).steps;
        const grips = (steps: typeof here) =>
          steps.map(({ start, duration, sounding: { pitch, ...grip } }) => ({
            start,
            duration,
            grip,
          }));
        expect(grips(there)).toEqual(grips(here));
      }),
      { numRuns: 20 },
    );
  });

  test('has a line for every form of the catalogue, within its bars', () => {
    for (const form of FORMS) {
      const chart = makeChart(form, 'G');
      const { steps } = composeLine(chart, 'C');
      expect(steps.length, form.id).toBeGreaterThanOrEqual(chart.bars / 2);
      expect(Math.max(...steps.map(({ bar }) => bar))).toBeLessThanOrEqual(chart.bars);
    }
  });

  test('keeps to the density, the level and the range', () => {
    const { steps } = composeLine(CHART, 'C', {
      density: { fewest: 3, most: 3 },
      level: 'natural',
      lowest: 60,
      highest: 72,
    });
    for (const bar of [1, 2, 3, 5, 6, 7, 9, 10, 11]) {
      expect(steps.filter((step) => step.bar === bar)).toHaveLength(3);
    }
    for (const { sounding } of steps) {
      expect(sounding.technique).toBe('natural');
      expect(sounding.pitch).toBeLessThanOrEqual(72);
    }
  });

  test('ends each chorus as asked', () => {
    const roots = [1, 2, 3, 4, 5].map((seed) =>
      composeLine(CHART, 'C', { seed, ending: 'root' }).steps.at(-1),
    );
    expect(roots.map((step) => step?.degree)).toEqual(['1', '1', '1', '1', '1']);
  });

  test('a bound of effort leaves out what is harder', () => {
    const bends = (effort?: number) =>
      [1, 2, 3].flatMap((seed) =>
        composeLine(CHART, 'C', { seed, ...(effort === undefined ? {} : { effort }) }).steps.filter(
          ({ sounding }) => sounding.technique !== 'natural',
        ),
      ).length;
    expect(bends(3)).toBeLessThan(bends());
  });

  test('follows a model: what it never likes never comes', () => {
    const transitions = DEFAULT_MELODY_MODEL.transitions.map((row) =>
      row.map((weight, degree) => (degree === 3 ? 0 : weight)),
    );
    for (const seed of [1, 2, 3, 4, 5]) {
      const { steps } = composeLine(CHART, 'C', {
        seed,
        model: { ...DEFAULT_MELODY_MODEL, transitions },
      });
      expect(steps.some(({ sounding }) => toPitchClass(sounding.pitch - 7) === 3)).toBe(false);
    }
  });

  test('draws from rhythms that are given', () => {
    const cells = [
      { notes: [[0, 1]], weight: 1 },
      { notes: [], weight: 1 },
    ] as const;
    const { steps } = composeLine(CHART, 'C', { cells });
    expect(steps.every(({ beat, duration }) => Number.isInteger(beat) && duration === 960)).toBe(
      true,
    );
  });

  test('leaves the introduction to the band', () => {
    const chart = makeChart('basic', 'G', { intro: 'from-the-five' });
    const { steps } = composeLine(chart, 'C');
    expect(Math.min(...steps.map(({ bar }) => bar))).toBeGreaterThan(4);
  });
});

describe('composeLine, where no line is to be had', () => {
  const refusal = (options: ComposeOptions, form = 'basic'): unknown => {
    try {
      return composeLine(makeChart(form, 'G'), 'C', options);
    } catch (error) {
      return error;
    }
  };

  test('names what cannot hold together, and nothing else', () => {
    expect(refusal({ lowest: 61, highest: 61 })).toMatchObject({
      code: 'COMPOSE_IMPOSSIBLE',
      expected: expect.stringContaining('range'),
    });
    expect(refusal({ density: { fewest: 9, most: 9 } })).toMatchObject({
      code: 'COMPOSE_IMPOSSIBLE',
      expected: 'other constraints: in phrase A density, cells cannot hold together',
    });
    expect(refusal({ leap: 0 })).toMatchObject({
      expected: expect.stringMatching(/^other constraints: in phrase [AB] .*leap/u),
    });
  });

  test.each([
    [{ plan: 'AABBB' }, 'COMPOSE_INVALID'],
    [{ plan: 'aab' }, 'COMPOSE_INVALID'],
    [{ seed: 0.5 }, 'NUMBER_RANGE'],
    [{ density: { fewest: 3, most: 2 } }, 'NUMBER_RANGE'],
    [{ density: null }, 'NUMBER_RANGE'],
    [{ cells: [] }, 'LIST_EMPTY'],
    [{ cells: [{ notes: [[0.5, 0.6]], weight: 1 }] }, 'COMPOSE_INVALID'],
    [{ cells: [{ notes: [], weight: 0 }] }, 'NUMBER_RANGE'],
    [{ model: { transitions: [], leaps: [1], chordTone: 1 } }, 'COMPOSE_INVALID'],
    [{ model: { ...DEFAULT_MELODY_MODEL, chordTone: 0 } }, 'COMPOSE_INVALID'],
    [{ model: { ...DEFAULT_MELODY_MODEL, leaps: [] } }, 'COMPOSE_INVALID'],
    [{ effort: -1 }, 'NUMBER_RANGE'],
    [{ effortModel: 'nobody' }, 'MODEL_UNKNOWN'],
    [{ ending: 'fine' }, 'OPTION_UNKNOWN'],
    [{ level: 'expert' }, 'OPTION_UNKNOWN'],
    [{ tempo: 90 }, 'OPTION_UNKNOWN'],
    [null, 'OPTION_UNKNOWN'],
  ])('refuses %j', (options, code) => {
    expect(refusal(options as ComposeOptions)).toMatchObject({ name: 'ReedplateError', code });
  });
});

describe('learnMelody', () => {
  const line = makeLine(
    [67, 70, 72, 70, 67].map((pitch, at) => ({ start: at * 480, duration: 480, pitch })),
  );

  test('counts which degree follows which, in any key alike', () => {
    const here = learnMelody([{ line, key: 'G' }]);
    expect(here.transitions[0]?.[3]).toBeCloseTo(1.1);
    expect(here.transitions[0]?.[5]).toBeCloseTo(0.1);
    expect(learnMelody([{ line, key: 'C' }])).not.toEqual(here);
  });

  test('makes lines that look like what was learned', () => {
    const model = learnMelody(Array.from({ length: 40 }, () => ({ line, key: 'G' })));
    const { steps } = composeLine(CHART, 'C', { model, changes: false, resolve: 12 });
    const known = steps.filter(({ sounding }) => [7, 10, 0].includes(toPitchClass(sounding.pitch)));
    expect(known.length / steps.length).toBeGreaterThan(0.8);
  });

  test('refuses no example and an empty one', () => {
    expect(() => learnMelody([])).toThrow(expect.objectContaining({ code: 'LIST_EMPTY' }));
    expect(() => learnMelody([{ line: makeLine([]), key: 'G' }])).toThrow(
      expect.objectContaining({ code: 'LINE_EMPTY' }),
    );
  });
});
