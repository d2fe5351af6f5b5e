import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv } from 'ajv';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { harp as anyHarp } from '../test/arbitraries.js';
import {
  BREATHS,
  type Hole,
  makePlayer,
  missingPitches,
  PLAYERS,
  type PlayerSkill,
  readPlayer,
  soundings,
  soundingsAt,
  soundingsOfPitch,
  TECHNIQUE_LEVELS,
  type Technique,
  toPlayer,
} from './index.js';

const TECHNIQUES: readonly Technique[] = ['natural', 'bend', 'overblow', 'overdraw', 'valved-bend'];

const anySkill: fc.Arbitrary<PlayerSkill> = fc.record(
  {
    technique: fc.constantFrom(...TECHNIQUES),
    breath: fc.constantFrom(...BREATHS),
    holes: fc.uniqueArray(fc.integer({ min: 1, max: 16 }) as fc.Arbitrary<Hole>, { minLength: 1 }),
    depths: fc.uniqueArray(fc.integer({ min: 1, max: 4 }), { minLength: 1 }),
  },
  { requiredKeys: ['technique'] },
);

const anyPlayer = fc
  .record({
    skills: fc.array(anySkill, { minLength: 1, maxLength: 6 }),
    splits: fc.subarray([3, 4, 5] as const),
    holdsTwoDraw: fc.boolean(),
  })
  .map(({ skills, ...details }) => makePlayer(skills, details));

describe('a player as a level', () => {
  test('a level and the player it is short for sound the same on any harp, valved or not', () => {
    fc.assert(
      fc.property(
        anyHarp,
        fc.constantFrom(...TECHNIQUE_LEVELS),
        fc.boolean(),
        (harp, level, valved) => {
          const player = soundings(harp, { level: PLAYERS[level], valved });
          expect(player).toEqual(soundings(harp, { level, valved }));
        },
      ),
    );
  });

  test('a player with every bend is the level bends, written out', () => {
    const all = makePlayer(['natural', 'bend', 'valved-bend'], { id: 'bends' });
    expect({ ...all, name: PLAYERS.bends.name }).toEqual(PLAYERS.bends);
  });

  test('what a player has is part of what there is, and the three ways to ask agree', () => {
    fc.assert(
      fc.property(anyHarp, anyPlayer, (harp, level) => {
        const everything = soundings(harp, { level: 'overbends' });
        const had = soundings(harp, { level });
        for (const sounding of had) {
          expect(everything).toContainEqual(sounding);
          expect(soundingsOfPitch(harp, sounding.pitch, { level })).toContainEqual(sounding);
        }
        const byHole = harp.holes.flatMap(({ hole }) =>
          BREATHS.flatMap((breath) => soundingsAt(harp, hole, breath, { level })),
        );
        expect(byHole).toEqual(had);
      }),
    );
  });

  test('a player with one more skill lacks no note that they had', () => {
    fc.assert(
      fc.property(anyHarp, anyPlayer, anySkill, (harp, player, skill) => {
        const better = makePlayer([...player.skills, skill], { holdsTwoDraw: player.holdsTwoDraw });
        const before = missingPitches(harp, { level: player });
        const after = missingPitches(harp, { level: better });
        expect(before).toEqual(expect.arrayContaining([...after]));
      }),
    );
  });

  test('bends on hole 4 alone are bends on hole 4 alone', () => {
    const level = makePlayer(['natural', { technique: 'bend', holes: [4] }]);
    const bent = soundings('C', { level }).filter(({ technique }) => technique === 'bend');
    expect(bent.map(({ hole, breath, depth }) => [hole, breath, depth])).toEqual([[4, 'draw', 1]]);
  });

  test('a bend of one depth is that depth alone: 3 draw a whole step down and no half step', () => {
    const level = makePlayer(['natural', { technique: 'bend', holes: [3], depths: [2] }]);
    expect(soundingsAt('C', 3, 'draw', { level }).map(({ depth }) => depth)).toEqual([0, 2]);
  });

  test('who does not hold 2 draw takes 3 blow where it is the same note, and only there', () => {
    const level = makePlayer(['natural'], { holdsTwoDraw: false });
    const ways = soundingsOfPitch('C', 67, { level }).map(({ hole, breath }) => [hole, breath]);
    expect(ways).toEqual([[3, 'blow']]);
    // The minor third of natural minor makes no difference to 2 draw; a raised 3 blow does.
    const raised = soundingsAt('C raised-third-blow', 2, 'draw', { level });
    expect(raised.length).toBe(1);
  });
});

describe('makePlayer and readPlayer', () => {
  test('readPlayer reads what JSON makes of a player, and its schema accepts it', () => {
    const file = fileURLToPath(new URL('../schemas/player.json', import.meta.url));
    const ajv = new Ajv({ strict: true, allowUnionTypes: true });
    const isPlayer = ajv.compile(JSON.parse(readFileSync(file, 'utf8')));
    fc.assert(
      fc.property(anyPlayer, (player) => {
        expect(readPlayer(JSON.stringify(player))).toEqual(player);
        expect(isPlayer(player), JSON.stringify(isPlayer.errors)).toBe(true);
      }),
    );
  });

  test.each([
    ['no skill', () => makePlayer([]), 'skills'],
    ['a technique that there is not', () => makePlayer(['bent' as 'bend']), 'skills[0]'],
    [
      'a hole of no harp',
      () => makePlayer([{ technique: 'bend', holes: [17 as 16] }]),
      'skills[0].holes[0]',
    ],
    ['no depth', () => makePlayer([{ technique: 'bend', depths: [] }]), 'skills[0].depths'],
    [
      'a field that there is not',
      () => makePlayer([{ technique: 'bend', hole: 4 } as never]),
      undefined,
    ],
    ['a width of no split', () => makePlayer(['natural'], { splits: [2 as 3] }), 'splits[0]'],
    ['splits that are no list', () => makePlayer(['natural'], { splits: 3 as never }), 'splits'],
    ['a name of nothing', () => makePlayer(['natural'], { name: '' }), 'name'],
    ['a wrong id', () => makePlayer(['natural'], { id: 'My Player' }), 'id'],
    ['no truth', () => makePlayer(['natural'], { holdsTwoDraw: 'no' as never }), 'holdsTwoDraw'],
  ])('makePlayer refuses %s', (_, make, path) => {
    expect(make).toThrow(
      expect.objectContaining({
        code: 'PLAYER_INVALID',
        ...(path === undefined ? {} : { where: expect.objectContaining({ path }) }),
      }),
    );
  });

  test.each([undefined, null, 3, 'bend', {}, []])('toPlayer refuses %j', (level) => {
    expect(() => toPlayer(level as never)).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
    );
  });

  test('makePlayer keeps the name of a model of effort, and none where none is given', () => {
    expect(makePlayer(['natural'], { model: 'gentle' }).model).toBe('gentle');
    expect(makePlayer(['natural'])).not.toHaveProperty('model');
  });

  test('players are frozen to the last list', () => {
    const player = makePlayer([{ technique: 'bend', holes: [4] }]);
    expect(Object.isFrozen(player.skills[0]?.holes)).toBe(true);
    expect(Object.isFrozen(PLAYERS.natural.splits)).toBe(true);
  });
});
