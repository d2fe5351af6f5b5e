import { makeChart, parseForm } from '@reedplate/form';
import { describe, expect, it } from 'vitest';
import { play } from './play.fixture.js';
import { type ScoreOptions, scoreLine } from './score-line.js';
import type { ScoreMeasures } from './score-types.js';

// Tiny lines, each measure worked by hand beside it. Weights as documented: a note weighs its beats
// and half a beat for being struck; time counts once, and once more for the strength of its place.

const blues = makeChart('basic', 'G');
const vamp = makeChart(parseForm('| I7 | % |'), 'G');
const twoChords = makeChart(parseForm('| I7 | IV7 |'), 'G');

function measure(line: string, on = blues, options: ScoreOptions = {}): ScoreMeasures {
  return scoreLine(play(line), on, { swing: 1, ...options }).measures;
}

describe('chord fit of scoreLine', () => {
  it.each([
    ['one root', 'G4@0', 1],
    // (1.5 × 1 + 2.5 × 0) / 4
    ['a root and a clash twice as long', 'G4@0 F#4@1/2', 1.5 / 4],
    // F# leads to G: 0.6 × 1 against 1 × 1.5
    ['a resolved half beat and a root', 'F#4@0/0.5 G4@0.5', (0.6 * 1 + 1.5) / 2.5],
    // The same over a beat, on the first: longer than G and stronger, it leans: 0.5 × 1.5 against 1 × 1
    ['a beat that leans on a root', 'F#4@0 G4@1/0.5', (0.5 * 1.5 + 1) / 2.5],
    // Bb falls to G: a turn of the blues
    ['a flat third that falls to the root', 'Bb4@0 G4@1', (0.8 * 1.5 + 1.5) / 3],
    // A grace note is part of its note; one that leads to none weighs its length; a quarter is struck in full
    ['a grace note before a root', 'F#4@0/0.1 G4@0.1', 1],
    ['a tenth of a beat apart from a root', 'F#4@0/0.1 G4@0.4', (0.6 * 0.1 + 1.5) / 1.6],
    ['a quarter of a beat before a root', 'F#4@0/0.25 G4@0.25', (0.6 * 0.75 + 1.5) / 2.25],
    ['a blue note held', 'Bb4@0/2', 0.5],
    ['a colour held', 'E5@0/2', 0.5],
    ['a note neither here nor there', 'C5@0/2', 0],
  ])('chord fit of scoreLine counts %s', (_, line, chordFit) => {
    expect(measure(line).chordFit).toBeCloseTo(chordFit, 12);
  });

  it('chord fit of scoreLine weighs the held part of a note by its length alone', () => {
    // B over G7 for a beat: 1.5 × 1. Held over C7 for two beats, a clash: 2 × 0.
    expect(measure('B4@3/3', twoChords).chordFit).toBeCloseTo(1.5 / 3.5, 12);
  });
});

describe('landing of scoreLine', () => {
  it.each([
    ['root', 'C5@4', 1],
    ['third', 'E5@4', 1],
    ['seventh', 'Bb4@4', 1],
    ['fifth', 'G4@4', 0.8],
    ['sixth, a colour', 'A4@4', 0.4],
    ['note outside', 'F4@4', 0],
    ['neighbour that resolves', 'E5@3 F5@4/0.5 E5@4.5', 0.5],
    ['blue note', 'G4@0/4 Db5@4/2', 0],
  ])('landing of scoreLine on a %s', (_, line, landing) => {
    const { changes } = scoreLine(play(line), twoChords, { swing: 1 });
    expect(changes[1]?.landing).toBe(landing);
  });

  it('landing of scoreLine takes a note up to a beat late, and leaves out a rest', () => {
    const landings = (line: string) =>
      scoreLine(play(line), twoChords, { swing: 1 }).changes.map(({ landing }) => landing);
    expect(landings('G4@0 C5@5')).toEqual([1, 1]);
    expect(landings('G4@0 C5@5.01')).toEqual([1, null]);
    expect(measure('G4@0 C5@5.01', twoChords).landing).toBe(1);
  });

  it('landing of scoreLine hears no late release as landing', () => {
    // F is held an eighth of a beat less a hair into C7, where it is outside.
    const landing = (line: string) =>
      scoreLine(play(line), twoChords, { swing: 1 }).changes[1]?.landing;
    expect(landing('F4@2/2.12 C5@4.5')).toBe(1);
    expect(landing('F4@2/2.125 C5@4.5')).toBe(0);
  });

  it('landing of scoreLine is the mean over the changes met', () => {
    expect(measure('G4@0 G4@4', twoChords).landing).toBeCloseTo((1 + 0.8) / 2, 12);
  });
});

describe('shares of time of scoreLine', () => {
  it.each([
    // Downbeat 1 + 1, second beat 1 + 0.5.
    ['a root on the first beat, a clash on the second', 'G4@0 F#4@1', 2 / 3.5, 0, 1 / 2],
    ['the same the other way round', 'F#4@0 B4@1 B4@3', (1.5 + 1.5) / 5, 3 / 5, 1 / 3],
    // Third beat 1 + 0.75; an off-beat eighth half of 1 + 0.25.
    [
      'a third on beat three, a colour after it',
      'B4@2/0.5 E5@2.5/0.5',
      0.875 / 1.5,
      0.875 / 1.5,
      0,
    ],
    ['chord tones alone', 'G4@0 D5@1 F5@2/2', 1, 3.5 / 7, 0],
  ])('shares of time of scoreLine for %s', (_, line, tones, guides, clash) => {
    const { chordToneShare, guideToneShare, clashTime } = measure(line, vamp);
    expect(chordToneShare).toBeCloseTo(tones, 12);
    expect(guideToneShare).toBeCloseTo(guides, 12);
    expect(clashTime).toBeCloseTo(clash, 12);
  });
});

describe('resolution of scoreLine', () => {
  it.each([
    ['at once, after a quarter of a beat', 'F#4@0/0.25 G4@0.25', 1 - 0.25 / 2],
    ['after half a beat', 'F#4@0/0.5 G4@0.5', 1 - 0.5 / 2],
    ['after the whole window', 'C5@0 B4@1', 0.5],
    ['after a rest within the window', 'C5@0/0.25 B4@0.75', 1 - 0.75 / 2],
    ['not at all', 'C5@0 G4@1', 0],
    ['too late', 'C5@0 B4@1.01', 0],
  ])('resolution of scoreLine %s', (_, line, resolution) => {
    expect(measure(line, vamp).resolution).toBeCloseTo(resolution, 12);
  });

  it.each([1, 2, 4])(
    'resolution of scoreLine is a half after the whole of a window of %i',
    (within) => {
      const weights = { resolveWithin: within };
      const { measures } = scoreLine(play(`C5@0 B4@${within}`), vamp, { swing: 1, weights });
      expect(measures.resolution).toBeCloseTo(0.5, 12);
    },
  );

  it('resolution of scoreLine weighs by length, and is null where nothing needs to resolve', () => {
    // C (a beat and a half of weight) resolves after a beat, F# (one and a half) does not.
    expect(measure('C5@0 B4@1 F#4@4', vamp).resolution).toBeCloseTo((1.5 * 0.5) / 3, 12);
    expect(measure('G4@0 B4@1', vamp).resolution).toBeNull();
  });
});

describe('coverage of scoreLine', () => {
  it.each([
    ['by its root', 'G4@0 C5@4', [true, true]],
    ['by a tone that G7 lacks, though late', 'G4@0 E5@7', [true, true]],
    ['by nothing: G is in both', 'G4@0 G4@4', [true, false]],
    ['by nothing played', 'G4@0', [true, null]],
    // The blues goes round: C7 comes before the first G7, and G is in both; B is new.
    ['first by a tone that the last chord lacks', 'B4@0 E5@4', [true, true]],
    ['first by nothing new', 'D5@3 E5@4', [true, true]],
  ])('coverage of scoreLine: a change shown %s', (_, line, shown) => {
    const { changes, measures } = scoreLine(play(line), twoChords, { swing: 1 });
    expect(changes.map((change) => change.shown)).toEqual(shown);
    const known = shown.filter((value) => value !== null);
    expect(measures.coverage).toBe(known.filter(Boolean).length / known.length);
  });

  it('coverage of scoreLine is null where no change has a tone of its own', () => {
    const power = makeChart(parseForm('| I5 | I7 |'), 'G');
    const { changes } = scoreLine(play('D5@0/4 D5@5/2'), power, { swing: 1 });
    // All of G5 is in G7: only its root could show it.
    expect(changes.map(({ shown }) => shown)).toEqual([null, false]);
  });
});

describe('timing of scoreLine', () => {
  // Mean distance to 0, 1/4, 1/3, 1/2, 2/3, 3/4 and 1 at random: the gaps are 1/4, 1/12, 1/6, 1/6,
  // 1/12 and 1/4, a quarter of each squared: (2/16 + 2/144 + 2/36) / 4.
  const atRandom = (2 / 16 + 2 / 144 + 2 / 36) / 4;

  it.each([
    ['halves', 'G4@0 G4@1.5', 0],
    ['triplets', 'G4@1.33333 G4@2.66667', 0],
    ['sixteenths', 'G4@1.25 G4@2.75', 0],
    ['a little late, and exact', 'G4@0.05/0.5 G4@1/0.5', 0.025],
    ['between', 'G4@0.125/0.5', 0.125],
  ])('timing of scoreLine for %s', (_, line, distance) => {
    expect(measure(line, vamp).timing).toBeCloseTo(Math.max(0, 1 - distance / atRandom), 3);
  });
});

describe('following of scoreLine', () => {
  it('following of scoreLine is what of the rest of chance the chord fit reaches', () => {
    const { measures, following } = scoreLine(play('G4@0/4 C5@4/2 G4@6/2'), twoChords);
    const { chance = 1, above } = following ?? {};
    expect(above).toBeCloseTo(((measures.chordFit ?? 0) - chance) / (1 - chance), 12);
    expect(measures.following).toBe(above);
  });

  it('following of scoreLine is nothing for one pitch, and all for roots', () => {
    expect(measure('G4@0/4 G4@4/4', twoChords).following).toBe(0);
    expect(measure('G4@0/4 C5@4/4', twoChords).following).toBe(1);
  });

  it('following of scoreLine is null where no chord changes', () => {
    const score = scoreLine(play('G4@0/4 D5@4/4'), vamp);
    expect([score.following, score.measures.following]).toEqual([null, null]);
    expect(score.total).toBe(100);
  });
});
