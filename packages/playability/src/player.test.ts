import { makePlayer, PLAYERS, type PlayerLike } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { bestPath, bestPaths, effortSensitivity, explainPath, fitHarps } from './index.js';

const lineOf = (...pitches: readonly number[]) =>
  makeLine(pitches.map((pitch, at) => ({ start: at * 960, duration: 960, pitch })));
/** Db5 of a C harp is 4 draw bent, Bb4 3 draw bent. */
const fourDraw = makePlayer(['natural', { technique: 'bend', holes: [4] }], { id: 'lee' });

describe('a player where a level is taken', () => {
  test('bestPath plays the bend that the player has, and says of others that they are beyond', () => {
    const path = bestPath(lineOf(72, 73, 74), 'C', { level: fourDraw });
    expect(path.playable && path.soundings[1]?.[0]).toMatchObject({ hole: 4, technique: 'bend' });
    const not = bestPath(lineOf(72, 70), 'C', { level: fourDraw });
    expect(not).toMatchObject({ playable: false, missing: 1, level: { id: 'lee' } });
    expect(!not.playable && not.first[0]?.obstacle).toBe('beyond-level');
    expect(!not.playable && not.alternatives[0]).toMatchObject({ change: 'level', level: 'bends' });
  });

  test('two players on one harp do not get each other’s ways', () => {
    const path = (level: PlayerLike) => bestPath(lineOf(70, 73), 'C', { level }).playable;
    const threeDraw = makePlayer(['natural', { technique: 'bend', holes: [3] }]);
    expect([path(fourDraw), path(threeDraw), path('bends')]).toEqual([false, false, true]);
  });

  test('a level and the player that it is short for are played alike', () => {
    const line = lineOf(67, 70, 72, 73);
    for (const find of [bestPath, bestPaths, explainPath, effortSensitivity]) {
      const named = JSON.stringify(find(line, 'C', { level: 'bends' }));
      const played = JSON.stringify(find(line, 'C', { level: PLAYERS.bends }));
      expect(played.replaceAll(JSON.stringify(PLAYERS.bends), '"bends"')).toBe(named);
    }
    const { harps } = fitHarps(line, ['C', 'A'], { level: PLAYERS.bends });
    expect(harps).toEqual(fitHarps(line, ['C', 'A'], { level: 'bends' }).harps);
  });

  test('an octave is split by who blocks three holes, and by no one else', () => {
    const octave = makeLine([60, 72].map((pitch) => ({ start: 0, duration: 960, pitch })));
    const path = (splits: readonly (3 | 4 | 5)[]) =>
      bestPath(octave, 'C', { level: makePlayer(['natural'], { splits }) }).playable;
    expect([path([4]), path([3, 5]), path([])]).toEqual([true, false, false]);
  });

  test('who does not hold 2 draw takes 3 blow for the same note', () => {
    const level = makePlayer(['natural'], { holdsTwoDraw: false });
    const path = bestPath(lineOf(67), 'C', { level });
    expect(path.playable && path.soundings[0]?.[0]).toMatchObject({ hole: 3, breath: 'blow' });
  });

  test('the effort model is that of the player where none is asked for', () => {
    const level = makePlayer(['natural'], { model: 'beginner' });
    expect(bestPath(lineOf(67), 'C', { level }).model).toBe('beginner');
    expect(bestPath(lineOf(67), 'C', { level, model: 'advanced' }).model).toBe('advanced');
    expect(bestPath(lineOf(67), 'C').model).toBe('intermediate');
  });

  test('bends is the level where none is given, whatever the model', () => {
    for (const model of ['beginner', 'intermediate', 'advanced']) {
      expect(bestPath(lineOf(70), 'C', { model })).toMatchObject({
        playable: true,
        level: 'bends',
      });
    }
  });
});
