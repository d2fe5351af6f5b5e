import { type Harp, makeHarp, soundings, TUNINGS } from '@reedplate/layout';
import { type Line, type Metre, makeLine, parseMetre } from '@reedplate/line';
import { TWELVE_KEYS } from '@reedplate/pitch';
import fc from 'fast-check';
import { TAB_DIALECT_IDS } from './dialects.js';
import { markOf, type TabEvent } from './tab-mark.js';
import type { TimedTab } from './timed-tab.js';

export const dialects = fc.constantFrom(...TAB_DIALECT_IDS);

/** Harps of every tuning in every key. */
export const harps: fc.Arbitrary<Harp> = fc
  .record({
    key: fc.constantFrom(...TWELVE_KEYS.map(({ name }) => name)),
    tuning: fc.constantFrom(...TUNINGS),
  })
  .map(({ key, tuning }) => makeHarp(key, { tuning }));

/** Something a harp can sound, as it is written; several on one breath now and then. */
export function eventsOf(harp: Harp): fc.Arbitrary<readonly TabEvent[]> {
  const marks = soundings(harp, { level: 'overbends' }).map(markOf);
  const event = fc.uniqueArray(fc.constantFrom(...marks), {
    minLength: 1,
    maxLength: 3,
    selector: ({ hole }) => hole,
  });
  return fc.array(event, { minLength: 1, maxLength: 12 });
}

export const metres = fc.constantFrom<Metre>(
  '4/4',
  '3/4',
  '12/8',
  '6/8',
  '2/2',
  '7/8',
  '5/16',
  '1/1',
);

/** Lengths in ticks: any at all, those of notes, and long ones. */
export const ticks = fc.oneof(
  fc.integer({ min: 1, max: 4000 }),
  fc.constantFrom(1, 40, 60, 80, 160, 240, 320, 480, 640, 960, 1440, 3840),
  fc.integer({ min: 3840, max: 400_000 }),
);

/** Events and rests with lengths, and the metre whose beats they count. */
export function timedOf(
  harp: Harp,
): fc.Arbitrary<{ readonly metre: Metre; readonly timed: readonly TimedTab[] }> {
  return fc
    .record({
      metre: metres,
      events: eventsOf(harp),
      lengths: fc.array(ticks, { minLength: 12, maxLength: 12 }),
      rests: fc.array(fc.boolean(), { minLength: 12, maxLength: 12 }),
    })
    .map(({ metre, events, lengths, rests }) => {
      const { beatTicks } = parseMetre(metre);
      const timed = events.map((event, at) => ({
        marks: rests[at] === true ? [] : event,
        beats: (lengths[at] ?? 1) / beatTicks,
      }));
      return { metre, timed };
    });
}

/** Lines of one note at a time that a harp can play, in any metre, at any ticks. */
export function linesOf(harp: Harp): fc.Arbitrary<Line> {
  const pitches = [...new Set(soundings(harp, { level: 'overbends' }).map(({ pitch }) => pitch))];
  const step = fc.record({
    rest: fc.oneof(fc.constant(0), ticks),
    duration: ticks,
    pitch: fc.constantFrom(...pitches),
  });
  return fc
    .record({ metre: metres, steps: fc.array(step, { minLength: 1, maxLength: 12 }) })
    .map(({ metre, steps }) => {
      let at = 0;
      const notes = steps.map(({ rest, duration, pitch }) => {
        const start = at + rest;
        at = start + duration;
        return { start, duration, pitch };
      });
      return makeLine(notes, { metre });
    });
}
