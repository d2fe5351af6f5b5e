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
    expect(root > credit.idiom && credit.idiom > passing).toBe(true);
    expect(passing > colour && colour > clash && passing > credit.leaning).toBe(true);
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
    expect(measures.chordFit).toBe(0.5);
  });

  it('weights of scoreLine: resolvedCredit lifts a note that resolves, and never lowers one', () => {
    const creditOf = (resolvedCredit: number) =>
      score('C5@0 B4@1', { resolvedCredit }).notes[0]?.credit;
    expect([0, 0.6, 0.9].map(creditOf)).toEqual([0.6, 0.6, 0.9]);
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

  it('weights of scoreLine: silence is what each silent share takes off', () => {
    const take = 'G4@0/3.9 G4@4/3.9';
    const at = (silence: number) => score(take, { silence }, blues).total;
    const whole = at(0);
    // Ten of twelve bars are silent.
    expect(at(0.5)).toBeCloseTo(whole * (1 - (0.5 * 10) / 12), 9);
    expect(at(1.2)).toBe(0);
  });

  it('weights of scoreLine: followingShare divides the total between chord fit and following', () => {
    const line = 'G4@0/3.9 G4@4/1.5 E5@6/2';
    const calibration = [
      { raw: 0, total: 0 },
      { raw: 1, total: 100 },
    ];
    const faults = Object.fromEntries(
      Object.keys(SCORE_WEIGHTS.faults).map((kind) => [kind, 0]),
    ) as ScoreWeights['faults'];
    const at = (followingShare: number) => score(line, { followingShare, calibration, faults });
    const { chordFit, following } = at(0).measures;
    expect(at(0).total).toBeCloseTo(100 * (chordFit ?? 0), 9);
    expect(at(1).total).toBeCloseTo(100 * (following ?? 0), 9);
    expect(at(0.25).total).toBeCloseTo(75 * (chordFit ?? 0) + 25 * (following ?? 0), 9);
  });

  it('weights of scoreLine: blindFrom is how much is played where both kinds of chance count alike', () => {
    // Three notes of eight beats and their strokes weigh nine and a half.
    const line = 'F#4@0/1 G4@1/3 E4@4/4';
    const at = (blindFrom: number) => score(line, { blindFrom }).following;
    const { shuffled = 0, blind = 0 } = at(9.5) ?? {};
    expect(Math.abs(shuffled - blind)).toBeGreaterThan(0.01);
    expect(at(9.5)?.chance).toBeCloseTo((shuffled + blind) / 2, 12);
    expect(at(9.5 / 4)?.chance).toBeCloseTo(0.2 * shuffled + 0.8 * blind, 12);
    expect(at(0)?.chance).toBeCloseTo(blind, 12);
  });

  it('weights of scoreLine: faults take off what the best other reading explains', () => {
    const stays = 'G4@0/3.9 G4@4/3.9 G4@8/3.9 G4@12/3.9';
    const v = makeChart(parseForm('| I7 | V7 | V7 | I7 |'), 'G');
    const calibration = [
      { raw: 0, total: 0 },
      { raw: 1, total: 100 },
    ];
    const at = (weight: number) =>
      score(stays, { calibration, faults: { ...SCORE_WEIGHTS.faults, 'one-chord': weight } }, v)
        .total;
    expect(at(1)).toBe(0);
    expect(at(0)).toBeGreaterThan(at(0.2));
  });

  it('weights of scoreLine: looseCost takes off what onsets lie off the grid beyond looseFree', () => {
    const loose = 'G4@0.1/0.8 B4@1.1/0.8 D5@2.1/0.8 C5@4.1/0.8 E5@5.1/0.8';
    const at = (looseFree: number, looseCost: number) =>
      score(loose, { looseFree, looseCost }).total;
    expect(at(0.2, 9)).toBe(at(0, 0));
    expect(at(0.05, 2)).toBeCloseTo(at(0, 0) * (1 - 2 * 0.05), 6);
  });

  it('weights of scoreLine: calibration maps the raw mean, level beyond its ends', () => {
    const at = (raw: number) =>
      score('G4@0/4 C5@4/4', {
        calibration: [
          { raw, total: 30 },
          { raw: raw + 1, total: 90 },
        ],
      }).total;
    // Every note is a root: the raw mean is 1.
    expect([at(1), at(0.5), at(-1)]).toEqual([30, 60, 90]);
  });
});
