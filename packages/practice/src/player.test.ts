import { makeChart } from '@reedplate/form';
import { makePlayer, PLAYERS } from '@reedplate/layout';
import { describe, expect, test } from 'vitest';
import { PRACTICE_KINDS, practiceLine } from './index.js';

const chart = makeChart('quick-change', 'G');

describe('a player where a level is taken', () => {
  test.each(PRACTICE_KINDS)(
    'practiceLine of %s is the same by a level as by its player',
    (kind) => {
      const line = practiceLine(chart, 'C', { kind, level: PLAYERS.natural });
      expect(line).toEqual(practiceLine(chart, 'C', { kind, level: 'natural' }));
      expect(practiceLine(chart, 'C', { kind })).toEqual(
        practiceLine(chart, 'C', { kind, level: 'bends' }),
      );
    },
  );

  test('practiceLine plays no bend that the player has not', () => {
    const level = makePlayer(['natural', { technique: 'bend', holes: [2] }]);
    const { steps } = practiceLine(chart, 'C', { kind: 'arpeggios', level });
    const bent = steps.flatMap(({ soundings }) =>
      soundings.filter(({ technique }) => technique !== 'natural'),
    );
    expect(bent.every(({ hole }) => hole === 2)).toBe(true);
  });

  test('practiceLine of chords splits only what the player blocks', () => {
    const level = makePlayer(['natural'], { splits: [] });
    const { steps } = practiceLine(chart, 'C', { kind: 'chords', level });
    for (const { soundings } of steps) {
      const holes = soundings.map(({ hole }) => hole);
      expect(Math.max(...holes) - Math.min(...holes)).toBe(holes.length - 1);
    }
  });

  test('practiceLine plays the root of who does not hold 2 draw on 3 blow', () => {
    const level = makePlayer(['natural'], { holdsTwoDraw: false });
    const [first] = practiceLine(chart, 'C', { kind: 'roots', level }).steps;
    expect(first?.soundings[0]).toMatchObject({ hole: 3, breath: 'blow' });
  });
});
