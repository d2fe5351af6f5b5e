import { makeHarp } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { parseTimedTab } from '@reedplate/tab';
import { describe, expect, it } from 'vitest';
import { barredTab } from './barred-tab.js';
import { easiestPath } from './easiest-path.js';

describe('barredTab', () => {
  it('barredTab puts a line between bars, and parts a rest there', () => {
    expect(barredTab(parseTimedTab('-2:3 r:3 -4:2'), '4/4')).toBe('-2:3 r | r:2 -4:2');
    expect(barredTab(parseTimedTab('-2 -4:6 -3'), '4/4')).toBe('-2 -4:6 -3');
    expect(barredTab(parseTimedTab('-2 -2:4 -3:4'), '4/4', 1)).toBe('-2 | -2:4 | -3:4');
    expect(barredTab(parseTimedTab('r:9 -2'), '4/4')).toBe('r:4 | r:4 | r -2');
  });

  it('barredTab keeps the thirds of a beat in their bar', () => {
    const thirds = parseTimedTab(Array.from({ length: 24 }, () => '-2:1/3').join(' '));
    expect(
      barredTab(thirds, '12/8')
        .split('|')
        .map((bar) => bar.trim().split(' ').length),
    ).toEqual([12, 12]);
  });
});

describe('easiestPath', () => {
  const harp = makeHarp('C');
  const line = makeLine(
    [0, 1, 2, 3].map((beat) => ({ start: beat * 960, duration: 960, pitch: beat === 2 ? 69 : 67 })),
  );
  const places = (level: Parameters<typeof easiestPath>[2], tonic: number) =>
    easiestPath(line, harp, level, tonic)?.soundings.map(
      ([{ hole, breath }]) => `${breath} ${hole}`,
    );

  it('easiestPath plays one note in one place', () => {
    for (const tonic of [0, 2, 7]) {
      const ways = new Set(places('bends', tonic)?.filter((_, at) => at !== 2));
      expect(ways.size).toBe(1);
    }
  });

  it('easiestPath is at home on 2 draw in cross harp, for who holds it', () => {
    expect(places('bends', 7)?.[0]).toBe('draw 2');
    const learner = {
      id: 'learner',
      name: 'Learner',
      skills: [{ technique: 'natural' }, { technique: 'bend' }],
      splits: [],
      holdsTwoDraw: false,
    } as const;
    expect(places(learner, 7)?.[0]).toBe('blow 3');
  });

  it('easiestPath is undefined where a note is not to be had', () => {
    expect(easiestPath(line, harp, 'natural', 7)).toBeUndefined();
  });
});
