import { makePlayer, PLAYERS } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { harpMap, pickForKeys, pickHarps, planSetList, scaleMap, scaleRun } from './index.js';

const line = makeLine([{ start: 0, duration: 960, pitch: 73 }]);

describe('a player where a level is taken', () => {
  test('pickHarps goes by what the player has: 4 draw bent is Db5 on a C harp', () => {
    const of = (level: Parameters<typeof makePlayer>[0]) =>
      pickHarps('G', { own: ['C'], line, level: makePlayer(level) })[0]?.line?.missing;
    expect(of(['natural', { technique: 'bend', holes: [4] }])).toBe(0);
    expect(of(['natural', { technique: 'bend', holes: [3] }])).toBe(1);
  });

  test('pickHarps finds a chord whole on the holes that the player has alone', () => {
    const level = makePlayer([{ technique: 'natural', holes: [1, 2, 3, 4] }]);
    const [pick] = pickHarps('C', { own: ['C'], level });
    expect(pick?.chords[0]?.whole).toEqual({ breath: 'blow', from: 1, to: 4 });
    const single = makePlayer([{ technique: 'natural', holes: [1, 3, 5] }]);
    expect(pickHarps('C', { own: ['C'], level: single })[0]?.chords[0]?.whole).toBeNull();
  });

  test('pickHarps lets a player who does not yet hold 2 draw alone have it within the chord', () => {
    const level = makePlayer(['natural'], { holdsTwoDraw: false });
    const [pick] = pickHarps('G', { own: ['C'], level });
    expect(pick?.chords[0]?.whole).toEqual({ breath: 'draw', from: 1, to: 5 });
  });

  test('a level and the player that it is short for pick the same', () => {
    const plan = (level: 'natural' | typeof PLAYERS.natural) => [
      pickHarps('G', { level }),
      pickForKeys([{ key: 'G' }, { key: 'C' }], { level }),
      planSetList([{ key: 'G' }, { key: 'A' }], { level }),
    ];
    expect(plan(PLAYERS.natural)).toEqual(plan('natural'));
  });

  test('harpMap, scaleMap and scaleRun show what the player has', () => {
    const level = makePlayer(['natural', { technique: 'bend', holes: [4] }]);
    const bent = harpMap('C', { level }).holes.flatMap(({ soundings }) =>
      soundings.filter(({ technique }) => technique === 'bend'),
    );
    expect(bent.map(({ hole }) => hole)).toEqual([4]);
    const { notes } = scaleMap('C', 'G', 'blues', { level });
    const run = scaleRun('C', 'G', 'blues', { level });
    const flatFifth = notes.find(({ name }) => name === 'Db5');
    expect(flatFifth?.soundings.map(({ hole }) => hole)).toEqual([4]);
    expect(run.find(({ name }) => name === 'Bb4')?.sounding).toBeNull();
    expect(run.find(({ name }) => name === 'Db5')?.sounding?.hole).toBe(4);
  });
});
