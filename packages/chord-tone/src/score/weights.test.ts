import { makeChart, parseForm } from '@reedplate/form';
import { describe, expect, it } from 'vitest';
import { NOTE_CLASSES } from './note-class.js';
import { play } from './play.fixture.js';
import { scoreLine } from './score-line.js';
import type { Score } from './score-types.js';
import { SCORE_WEIGHTS, type ScoreWeights } from './weights.js';

const blues = makeChart('basic', 'G');
const two = makeChart(parseForm('| I7 | IV7 |'), 'G');

function score(line: string, weights: Partial<ScoreWeights> = {}, on = two): Score {
  return scoreLine(play(line), on, { swing: 1, weights });
}

describe('SCORE_WEIGHTS', () => {
  it('SCORE_WEIGHTS gives every class a credit and a landing from 0 to 1', () => {
    for (const table of [SCORE_WEIGHTS.credit, SCORE_WEIGHTS.landing]) {
      expect(Object.keys(table).sort()).toEqual([...NOTE_CLASSES].sort());
      expect(Object.values(table).every((worth) => worth >= 0 && worth <= 1)).toBe(true);
    }
  });

  it('SCORE_WEIGHTS credits chord tones, then what resolves, then colours, then what does not', () => {
    const { credit, resolvedCredit } = SCORE_WEIGHTS;
    const [root, passing, colour, clash] = [
      credit.root,
      credit.passing,
      credit.colour,
      credit.clash,
    ];
    expect(root > passing && passing > colour && colour > clash).toBe(true);
    expect([credit.neighbour, credit.approach, resolvedCredit]).toEqual([
      passing,
      passing,
      passing,
    ]);
    expect([credit['guide-tone'], credit['chord-tone']]).toEqual([root, root]);
  });

  it('SCORE_WEIGHTS has a calibration from 0 to 100 over rising values', () => {
    const { calibration } = SCORE_WEIGHTS;
    expect([calibration[0]?.total, calibration.at(-1)?.total]).toEqual([0, 100]);
    const raws = calibration.map(({ raw }) => raw);
    expect(raws).toEqual([...new Set(raws)].sort((a, b) => a - b));
  });

  it('SCORE_WEIGHTS cannot be changed', () => {
    expect(() => {
      (SCORE_WEIGHTS.credit as { clash: number }).clash = 1;
    }).toThrow(TypeError);
  });
});

describe('weights of scoreLine', () => {
  it('weights of scoreLine: credit is what a note of the class counts', () => {
    const credit = { ...SCORE_WEIGHTS.credit, root: 0.25, 'guide-tone': 0.75 };
    const { notes, measures } = score('G4@0 B4@1', { credit });
    expect(notes.map((note) => note.credit)).toEqual([0.25, 0.75]);
    expect(measures.fit).toBe(0.5);
  });

  it('weights of scoreLine: resolvedCredit lifts a note that resolves, and never lowers one', () => {
    const creditOf = (resolvedCredit: number) =>
      score('C5@0 B4@1', { resolvedCredit }).notes[0]?.credit;
    expect([0, 0.5, 0.9].map(creditOf)).toEqual([0.7, 0.7, 0.9]);
    expect(score('C5@0 G4@1', { resolvedCredit: 0.9 }).notes[0]?.credit).toBe(0);
  });

  it('weights of scoreLine: struck adds to every note struck, and bounds what is long enough to clash', () => {
    const at = (struck: number) => score('B4@0 F#4@2/0.75', { struck }).notes;
    expect(at(0.5).map(({ weight }) => weight)).toEqual([1.5, 1.25]);
    expect(at(0).map(({ weight }) => weight)).toEqual([1, 0.75]);
    expect(at(0.5).map((note) => note.class)).toEqual(['guide-tone', 'clash']);
    expect(at(1).map((note) => note.class)).toEqual(['guide-tone', 'unresolved']);
  });

  it('weights of scoreLine: resolveWithin is the longest wait', () => {
    const at = (resolveWithin: number) => score('C5@0 B4@1.5', { resolveWithin }).notes[0]?.class;
    expect([1, 1.49, 1.5, 2].map(at)).toEqual(['unresolved', 'unresolved', 'approach', 'approach']);
  });

  it('weights of scoreLine: pushWithin is the earliest push', () => {
    const at = (pushWithin: number) => score('E5@3.25/0.75', { pushWithin }).notes[0]?.push;
    expect([0, 0.5, 0.75, 1].map(at)).toEqual([false, false, true, true]);
  });

  it('weights of scoreLine: landWithin is the latest landing', () => {
    const at = (landWithin: number) => score('C5@5.5', { landWithin }).changes[1]?.class ?? null;
    expect([0, 1, 1.5, 2].map(at)).toEqual([null, null, 'root', 'root']);
  });

  it('weights of scoreLine: landing is what sounding at a change counts', () => {
    const landing = { ...SCORE_WEIGHTS.landing, 'chord-tone': 0.1 };
    expect(score('G4@4', { landing }).measures.landing).toBe(0.1);
  });

  it('weights of scoreLine: enoughPlayed is the share of bars from which the total counts in full', () => {
    const total = (enoughPlayed: number) => score('G4@0 D5@4', { enoughPlayed }, blues).total;
    const full = total(0);
    expect(total(2 / 12)).toBeCloseTo(full, 9);
    expect(total(4 / 12)).toBeCloseTo(full / 2, 9);
    expect(total(1)).toBeCloseTo(full / 6, 9);
  });

  it('weights of scoreLine: calibration maps the raw mean, level beyond its ends', () => {
    const calibration = [
      { raw: 0.5, total: 20 },
      { raw: 0.75, total: 60 },
    ];
    const only = { ...SCORE_WEIGHTS.measures, landing: 0, coverage: 0, fit: 1 };
    const total = (line: string) =>
      score(line, { calibration, chanceShare: 0, enoughPlayed: 0, measures: only }).total;
    // Fit 1, 0 and 1.5 × 1 of 2.5: 0.6.
    expect(total('G4@0')).toBe(60);
    expect(total('F#4@0/2')).toBe(20);
    expect(total('G4@0 C5@1/0.5')).toBeCloseTo(20 + ((0.6 - 0.5) / 0.25) * 40, 9);
  });

  it('weights of scoreLine: chance moves with the credit, and is the fit of a line that cannot change', () => {
    const plain = {
      chanceShare: 0,
      enoughPlayed: 0,
      calibration: [
        { raw: 0, total: 0 },
        { raw: 1, total: 100 },
      ],
    };
    const { total, chance } = score('G4@0 G4@1.5 G4@3', plain);
    expect([total, chance]).toEqual([100, 100]);
    const poor = { ...SCORE_WEIGHTS.credit, root: 0.5 };
    expect(score('G4@0 G4@1.5 G4@3', { ...plain, credit: poor }).chance).toBeLessThan(chance);
  });
});
