import {
  type Harp,
  makeHarp,
  makeTuning,
  soundings,
  TECHNIQUE_LEVELS,
  TUNINGS,
} from '@reedplate/layout';
import { type Line, makeLine } from '@reedplate/line';
import fc from 'fast-check';
import type { EffortModel, EffortWeights } from './effort-model.js';
import { EFFORT_MODELS } from './effort-models.js';
import { makeEffortModel } from './make-effort-model.js';
import { EFFORT_WEIGHT_IDS } from './weights.js';

/** Any tuning of a few holes: reeds close together, so that many pitches lie in several places. */
export const smallHarps: fc.Arbitrary<Harp> = fc
  .array(fc.tuple(fc.integer({ min: 60, max: 70 }), fc.integer({ min: 60, max: 70 })), {
    minLength: 1,
    maxLength: 5,
  })
  .map((reeds) =>
    makeHarp('C', {
      tuning: makeTuning({
        id: 'any',
        blow: reeds.map(([blow]) => blow),
        draw: reeds.map(([, draw]) => draw),
      }),
    }),
  );

/** Any harp of the catalogue. */
export const catalogueHarps: fc.Arbitrary<Harp> = fc
  .constantFrom(...TUNINGS)
  .map((tuning) => makeHarp(tuning.label, { tuning }));

/** A small harp and a short line of which most notes can be sounded on it. */
export const smallCases: fc.Arbitrary<readonly [Line, Harp]> = smallHarps.chain((harp) =>
  lines(pitchesOf(harp), { maxLength: 6 }).map((line): readonly [Line, Harp] => [line, harp]),
);

/** A harp of the catalogue and a melody within it. */
export const melodyCases: fc.Arbitrary<readonly [Line, Harp]> = catalogueHarps.chain((harp) =>
  melodies(pitchesOf(harp)).map((line): readonly [Line, Harp] => [line, harp]),
);

/** Mostly pitches that a harp has, now and then one that it may not have. */
function pitchesOf(harp: Harp): fc.Arbitrary<number> {
  const has = fc.constantFrom(...soundings(harp, { level: 'overbends' }).map(({ pitch }) => pitch));
  return fc.oneof({ arbitrary: has, weight: 40 }, fc.integer({ min: 57, max: 97 }));
}

export const levels = fc.constantFrom(...TECHNIQUE_LEVELS);

/** Short lines with gaps, overlaps, chords and unisons. */
export function lines(
  pitches: fc.Arbitrary<number>,
  { maxLength = 6 }: { readonly maxLength?: number } = {},
): fc.Arbitrary<Line> {
  const note = fc.record({
    start: fc.integer({ min: 0, max: 12 }).map((eighths) => eighths * 480),
    duration: fc.integer({ min: 1, max: 5000 }),
    pitch: pitches,
  });
  const tempo = fc.integer({ min: 30, max: 240 });
  return fc
    .tuple(fc.array(note, { minLength: 1, maxLength }), tempo)
    .map(([notes, beats]) => makeLine(notes, { tempo: beats }));
}

/** Melodies: one note after another, with rests now and then. */
export function melodies(
  pitches: fc.Arbitrary<number>,
  { maxLength = 8 }: { readonly maxLength?: number } = {},
): fc.Arbitrary<Line> {
  const note = fc.record({
    duration: fc.integer({ min: 100, max: 6000 }),
    rest: fc.constantFrom(0, 0, 0, 480, 3840),
    pitch: pitches,
  });
  const tempo = fc.integer({ min: 30, max: 240 });
  return fc.tuple(fc.array(note, { minLength: 1, maxLength }), tempo).map(([notes, beats]) => {
    let start = 0;
    const timed = notes.map(({ duration, rest, pitch }) => {
      start += rest;
      const begun = start;
      start += duration;
      return { start: begun, duration, pitch };
    });
    return makeLine(timed, { tempo: beats });
  });
}

const TIMES = new Set([
  'moveTime',
  'turnTime',
  'bendTime',
  'comfort',
  'capacity',
  'recovery',
  'chordAir',
]);
const SHORT = fc.double({ min: 0, max: 3, noNaN: true });

/** Random figures for every weight; many small whole numbers, so that ties are common. */
const randomWeights: fc.Arbitrary<EffortWeights> = fc
  .record(
    Object.fromEntries(
      EFFORT_WEIGHT_IDS.map((id) => [
        id,
        TIMES.has(id) ? SHORT : fc.oneof(fc.integer({ min: 0, max: 3 }), SHORT),
      ]),
    ),
  )
  .map((weights) => {
    const { comfort = 0, capacity = 0 } = weights;
    return {
      ...weights,
      comfort: Math.min(comfort, capacity),
      capacity: Math.max(comfort, capacity),
    } as unknown as EffortWeights;
  });

const ranks = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 16 });

/** The catalogue's models and models with random figures. */
export const models: fc.Arbitrary<EffortModel> = fc.oneof(
  fc.constantFrom(...EFFORT_MODELS),
  fc
    .tuple(randomWeights, fc.record({ drawBend: ranks, blowBend: ranks, overbend: ranks }))
    .map(([weights, holeRanks]) => makeEffortModel('intermediate', { weights, holeRanks })),
);
