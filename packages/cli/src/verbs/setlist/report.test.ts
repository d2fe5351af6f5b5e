import { makeHarp } from '@reedplate/layout';
import { planSet } from '@reedplate/position';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { keys, levels } from '../../shared/arbitraries.fixture.js';
import { pickReport } from '../pick/report.js';
import { setlistReport } from './report.js';

const sets = fc.array(
  fc.record({ key: keys, title: fc.option(fc.string({ minLength: 1 }), { nil: undefined }) }),
  { minLength: 1, maxLength: 8 },
);
const songsOf = (set: readonly { key: { name: string }; title: string | undefined }[]) =>
  set.map(({ key, title }) => ({
    key: key.name as 'C',
    ...(title === undefined ? {} : { title }),
  }));

describe('setlistReport', () => {
  test('setlistReport has every song in order, by its title or its place', () => {
    fc.assert(
      fc.property(sets, (set) => {
        const { songs } = setlistReport(songsOf(set));
        expect(songs.map(({ title }) => title)).toEqual(
          set.map(({ title }, index) => title ?? `${index + 1}`),
        );
        expect(songs.map(({ key }) => key)).toEqual(set.map(({ key }) => key.name));
      }),
      { numRuns: 30 },
    );
  });

  test('setlistReport counts the songs that another harp is picked up for', () => {
    fc.assert(
      fc.property(sets, levels, (set, level) => {
        const { songs, changes } = setlistReport(songsOf(set), { level });
        expect(songs.filter((song) => song.changes)).toHaveLength(changes);
        expect(songs[0]?.changes).toBe(false);
        for (const [index, song] of songs.entries()) {
          const before = songs[index - 1]?.harp ?? song.harp;
          expect(song.changes).toBe(song.harp !== before);
        }
      }),
      { numRuns: 30 },
    );
  });

  test('setlistReport plans as planSet does', () => {
    fc.assert(
      fc.property(sets, (set) => {
        const { songs, changes } = setlistReport(songsOf(set));
        const plan = planSet(songsOf(set));
        expect(changes).toBe(plan.changes);
        expect(songs.map(({ position }) => position)).toEqual(
          plan.steps.map(({ pick }) => pick.position),
        );
      }),
      { numRuns: 30 },
    );
  });

  test('setlistReport with a least share of 1 gives each song what pickReport puts first', () => {
    for (const key of ['G', 'Bb', 'E'] as const) {
      const [song] = setlistReport([{ key }], { leastShare: 1 }).songs;
      const [best] = pickReport(key).picks;
      expect([song?.position, song?.weight]).toEqual([best?.position, best?.weight]);
    }
  });

  test('setlistReport never changes harps more often when worse harps will do', () => {
    fc.assert(
      fc.property(sets, fc.double({ min: 0, max: 1, noNaN: true }), (set, leastShare) => {
        const strict = setlistReport(songsOf(set), { leastShare: 1 }).changes;
        expect(setlistReport(songsOf(set), { leastShare }).changes).toBeLessThanOrEqual(strict);
      }),
      { numRuns: 30 },
    );
  });

  test('setlistReport calls harps as players do', () => {
    const own = [makeHarp('F', { register: 'low' })];
    expect(setlistReport([{ key: 'C' }], { own }).songs[0]?.harp).toBe('low F');
  });

  test('setlistReport refuses a set without songs', () => {
    expect(() => setlistReport([])).toThrow(expect.objectContaining({ code: 'LIST_EMPTY' }));
  });
});
