import { makeChart } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { DRUMS } from './drums.js';
import type { Groove } from './groove.js';
import { GROOVES } from './grooves.js';
import { type BackingOptions, makeBacking } from './make-backing.js';
import { readPattern } from './pattern.js';
import { bandEvents } from './sound/band-events.js';

describe('GROOVES', () => {
  test.each(GROOVES.map((groove): [string, Groove] => [groove.id, groove]))(
    '%s can be read: every pattern has beats of its parts, fills of two beats',
    (_, { drums, fills, comping, parts }) => {
      for (const pattern of [...Object.values(drums), comping.rhythm]) {
        expect(readPattern(pattern, parts).length).toBeGreaterThanOrEqual(3);
      }
      expect(fills.length).toBeGreaterThanOrEqual(2);
      for (const pattern of fills.flatMap((fill) => Object.values(fill))) {
        expect(readPattern(pattern, parts)).toHaveLength(2);
      }
    },
  );

  test('no two of them play the same', () => {
    const played = GROOVES.map((groove) => {
      const metre = groove.parts === 3 ? '12/8' : '4/4';
      return JSON.stringify(makeBacking(makeChart('basic', 'G', { metre }), { groove }).parts);
    });
    expect(new Set(played).size).toBe(GROOVES.length);
  });

  test('the second chorus is not the first: fills and walks are drawn anew', () => {
    const { parts } = makeBacking(makeChart('basic', 'G', { choruses: 2 }), { countIn: 0 });
    const drums = parts?.find(({ percussion }) => percussion)?.line.notes ?? [];
    const half = 12 * 3840;
    const [one, two] = [0, half].map((from) =>
      drums
        .filter(({ start }) => start >= from && start < from + half)
        .map(({ start, pitch }) => [start - from, pitch]),
    );
    expect(one).not.toEqual(two);
  });
});

describe('makeBacking by its options', () => {
  const chart = makeChart('basic', 'G');
  const velocities = (options: BackingOptions) =>
    makeBacking(chart, options)
      .parts?.find(({ name }) => name === 'Bass')
      ?.line.notes.map((note) => note.velocity ?? 0) ?? [];

  test.each([
    ['shuffle', '4/4', 'driving-shuffle'],
    ['straight', '4/4', 'straight-rock'],
    ['slow-12/8', '12/8', 'slow-twelve-eight'],
    ['shuffle', '3/4', 'waltz'],
  ] as const)('plays %s in %s as %s where no groove is given', (feel, metre, groove) => {
    const own = makeChart('basic', 'G', { feel, metre });
    expect(makeBacking(own)).toEqual(makeBacking(own, { groove }));
  });

  test('a level makes a part louder or softer, a program is written', () => {
    const [usual, soft] = [velocities({}), velocities({ bass: { level: 0.5 } })];
    expect(soft).toEqual(usual.map((velocity) => Math.round(velocity * 0.5)));
    expect(Math.max(...velocities({ bass: { level: 2 } }))).toBe(127);
    const { parts } = makeBacking(chart, { comping: { program: 17 } });
    expect(parts?.find(({ name }) => name === 'Comping')?.program).toBe(17);
  });

  test('trade leaves every other four bars to drums alone', () => {
    const { parts } = makeBacking(chart, { trade: true, countIn: 0, ending: false });
    const bars = (name: string) =>
      new Set(
        parts
          ?.find((part) => part.name === name)
          ?.line.notes.map(({ start }) => Math.floor(start / 3840) + 1),
      );
    expect([...bars('Bass')]).toEqual([1, 2, 3, 4, 9, 10, 11, 12]);
    expect(bars('Drums').size).toBe(12);
  });

  test('a groove of one’s own is played', () => {
    const groove: Groove = {
      id: 'plain',
      name: 'Plain',
      use: 'A test.',
      parts: 2,
      drums: { rim: 'x. x. x. x.' },
      fills: [],
      bass: 'two-beat',
      comping: { figure: 'held', rhythm: 'x. .. .. ..' },
    };
    const { parts } = makeBacking(chart, { groove, countIn: 0, ending: false });
    const drums = parts?.find(({ percussion }) => percussion)?.line.notes ?? [];
    expect(drums.filter(({ pitch }) => pitch === 37)).toHaveLength(48);
  });

  test.each([
    [{ groove: 'boggie' }, 'OPTION_UNKNOWN', /boogie/u],
    [{ groove: 'slow-twelve-eight' }, 'GROOVE_INVALID', /beats of three/u],
    [{ groove: { ...GROOVES[0], drums: { kick: 'x.x' } } }, 'GROOVE_INVALID', /beats of 2 signs/u],
    [{ groove: { ...GROOVES[0], drums: { kick: 'y. y.' } } }, 'GROOVE_INVALID', /X, x, o or \./u],
    [{ groove: 4 }, 'OPTION_UNKNOWN', /a groove/u],
    [{ bass: { level: 3 } }, 'NUMBER_RANGE', /a level of a part/u],
    [{ bass: { program: 0 } }, 'NUMBER_RANGE', /a program/u],
    [{ bass: { volume: 1 } }, 'OPTION_UNKNOWN', /a part/u],
    [{ seed: 1.5 }, 'NUMBER_RANGE', /a seed/u],
    [{ bounce: 2 }, 'OPTION_UNKNOWN', /makeBacking/u],
  ])('refuses %j', (options, code, message) => {
    expect(() => makeBacking(chart, options as BackingOptions)).toThrow(
      expect.objectContaining({ code, message: expect.stringMatching(message) }),
    );
  });
});

describe('the onsets of a band', () => {
  const BARS = 24;
  /** Where the signs of a rhythm stand within a bar, in shares of it from 0 to 1. */
  const sharesOf = (rhythm: string, parts: number, beats: number): readonly number[] => {
    const groups = rhythm.split(' ');
    return Array.from({ length: beats }, (_, beat) => groups[beat % groups.length] ?? '').flatMap(
      (group, beat) =>
        [...group].flatMap((sign, part) => (sign === '.' ? [] : [(beat + part / parts) / beats])),
    );
  };

  test.each(GROOVES.map((groove): [string, Groove] => [groove.id, groove]))(
    'of %s lie where its rhythms have them, in every bar but for fills',
    (_, groove) => {
      const { drums, comping, parts } = groove;
      const metre = parts === 3 ? '12/8' : '4/4';
      const chart = makeChart('basic', 'G', { metre, choruses: 2, feel: 'straight' });
      const backing = makeBacking(chart, { groove, countIn: 0, ending: false });
      const { barTicks } = parseMetre(metre);
      /** How often a part begins something at each share of a bar, over bars without a fill. */
      const counted = (name: string, pitch?: number) => {
        const { line } = backing.parts?.find((part) => part.name === name) ?? {};
        const starts = (line?.notes ?? [])
          .filter((note) => pitch === undefined || note.pitch === pitch)
          .map(({ start }) => start);
        const counts = new Map<string, number>();
        for (const start of new Set(starts)) {
          const bar = Math.floor(start / barTicks) + 1;
          if (bar % 4 === 0) continue;
          const share = ((start % barTicks) / barTicks).toFixed(3);
          counts.set(share, (counts.get(share) ?? 0) + 1);
        }
        return counts;
      };
      const expected = (rhythm: string) =>
        new Map(sharesOf(rhythm, parts, 4).map((share) => [share.toFixed(3), (BARS * 3) / 4]));
      const sorted = (counts: ReadonlyMap<string, number>) => [...counts].sort();
      for (const [name, rhythm] of Object.entries(drums)) {
        const found = counted('Drums', DRUMS[name as keyof typeof DRUMS]);
        expect(sorted(found), name).toEqual(sorted(expected(rhythm)));
      }
      expect(sorted(counted('Comping')), 'comping').toEqual(sorted(expected(comping.rhythm)));
      // The bass is on the first beat of every bar: each brings a chord or goes on with it.
      expect(counted('Bass').get('0.000')).toBe((BARS * 3) / 4);
    },
  );

  test('are swung in the sound, on two thirds of a beat', () => {
    const chart = makeChart('basic', 'G', { tempo: 120 });
    const shares = (groove: 'boogie' | 'straight-rock', feel: 'shuffle' | 'straight') => {
      const backing = makeBacking({ ...chart, feel }, { groove, countIn: 0 });
      const places = bandEvents(backing).map(({ start }) => ((start * 2) % 1).toFixed(2));
      return [...new Set(places)].filter((place) => place !== '0.00' && place !== '1.00');
    };
    expect(shares('boogie', 'shuffle')).toEqual(['0.67']);
    expect(shares('straight-rock', 'straight')).toEqual(['0.50']);
  });
});
