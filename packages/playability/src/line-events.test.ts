import { makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { smallCases } from './arbitraries.fixture.js';
import { bestPath, eventsOf, everyHarp } from './index.js';
import { lineTimes, stepsHeld, stepsRested } from './line-times.js';

describe('eventsOf', () => {
  test('eventsOf gives every start once, in order, with every pitch that begins there', () => {
    fc.assert(
      fc.property(smallCases, ([line]) => {
        const events = eventsOf(line);
        const starts = [...new Set(line.notes.map(({ start }) => start))];
        expect(events.map(({ start }) => start)).toEqual(starts);
        for (const { start, pitches } of events) {
          const there = line.notes.filter((note) => note.start === start);
          expect(new Set(pitches)).toEqual(new Set(there.map(({ pitch }) => pitch)));
        }
      }),
    );
  });

  test('eventsOf lets each event go before the next, and no later than its longest note ends', () => {
    fc.assert(
      fc.property(smallCases, ([line]) => {
        const events = eventsOf(line);
        for (const [at, { start, end }] of events.entries()) {
          expect(end).toBeGreaterThan(start);
          expect(end).toBeLessThanOrEqual(events[at + 1]?.start ?? Infinity);
          const ends = line.notes
            .filter((note) => note.start === start)
            .map(({ duration }) => start + duration);
          expect(end).toBeLessThanOrEqual(Math.max(...ends));
        }
      }),
    );
  });

  test('lineTimes reads the same events, and its air steps add up to the time from first to last', () => {
    fc.assert(
      fc.property(smallCases, ([line]) => {
        const events = eventsOf(line);
        const times = lineTimes(line);
        expect(times.count).toBe(events.length);
        const sets = [...times.set.slice(0, times.count)].map((set) => times.sets[set]);
        expect(sets).toEqual(events.map(({ pitches }) => pitches));
        expect(times.setCounts.reduce((sum, count) => sum + count, 0)).toBe(times.count);
        const steps = events.reduce(
          (sum, _, event) => sum + stepsHeld(times, event) + stepsRested(times, event),
          0,
        );
        const perTick = 60 / ((line.tempo ?? 100) * 960);
        expect(steps).toBe(Math.round((events.at(-1)?.end ?? 0) * perTick * 10));
      }),
    );
  });
});

describe('tempo', () => {
  const harp = everyHarp({ keys: ['C'] })[0];
  const pitches = [60, 79, 60];
  const notes = pitches.map((pitch, at) => ({ start: at * 960, duration: 960, pitch }));
  const effort = (tempo: number | undefined, asked?: number) => {
    const line = makeLine(notes, tempo === undefined ? {} : { tempo });
    if (harp === undefined) throw new Error('one harp');
    const path = bestPath(line, harp, asked === undefined ? {} : { tempo: asked });
    if (!path.playable) throw new Error('not playable');
    return path.effort;
  };

  test('bestPath goes by the tempo asked for, then that of the line, then 100', () => {
    expect(effort(500)).toBeGreaterThan(effort(40));
    expect(effort(500, 40)).toBe(effort(40));
    expect(effort(undefined)).toBe(effort(100));
  });

  test('bestPath counts felt beats: a dotted quarter in 6/8', () => {
    const inSix = makeLine(
      notes.map((note) => ({ ...note, start: note.start * 1.5, duration: 1440 })),
      { metre: '6/8', tempo: 400 },
    );
    if (harp === undefined) throw new Error('one harp');
    const path = bestPath(inSix, harp);
    expect(path.playable && path.effort).toBe(effort(400));
  });
});

describe('everyHarp', () => {
  test('everyHarp makes every combination once, by tuning, register and key', () => {
    const harps = everyHarp({
      keys: ['A', 'C'],
      tunings: ['standard', 'natural-minor'],
      registers: ['low', 'standard'],
    });
    expect(harps.map(({ tuning, register, key }) => `${tuning} ${register} ${key}`)).toEqual([
      'standard low A',
      'standard low C',
      'standard standard A',
      'standard standard C',
      'natural-minor low Am',
      'natural-minor low Cm',
      'natural-minor standard Am',
      'natural-minor standard Cm',
    ]);
  });
});
