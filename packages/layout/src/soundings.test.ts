import { describe, expect, it } from 'vitest';
import {
  type Breath,
  type Harp,
  type Hole,
  makeHarp,
  makeTuning,
  otherBreath,
  reedsSounding,
  type Sounding,
  soundings,
  soundingsAt,
  soundingsOfPitch,
  TECHNIQUE_LEVELS,
  type TechniqueLevel,
} from './index.js';

const HARP = makeHarp('C');
const EVERYTHING = { level: 'overbends' } as const;
const brief = ({ hole, breath, technique, depth }: Sounding): string =>
  `${hole} ${breath} ${technique} ${depth}`;

describe('soundings', () => {
  it('goes by the level of bends where no player is given', () => {
    expect(soundings(HARP)).toEqual(soundings(HARP, { level: 'bends' }));
    expect(soundings(HARP).length).toBeLessThan(soundings(HARP, EVERYTHING).length);
  });

  it('goes from hole 1 up, blow before draw, natural before bends before the overbend', () => {
    const all = soundings(HARP, EVERYTHING);
    expect(all.slice(0, 5).map(brief)).toEqual([
      '1 blow natural 0',
      '1 blow overblow 1',
      '1 draw natural 0',
      '1 draw bend 1',
      '2 blow natural 0',
    ]);
    expect(all.map(({ hole }) => hole)).toEqual(
      [...all.map(({ hole }) => hole)].sort((a, b) => a - b),
    );
  });

  it('counts 20, 32 and 42 ways on the standard layout at the three levels', () => {
    expect(TECHNIQUE_LEVELS.map((level) => soundings(HARP, { level }).length)).toEqual([
      20, 32, 42,
    ]);
  });

  it('takes a list of valved holes', () => {
    const half = soundings(HARP, { ...EVERYTHING, valved: [1, 2] });
    expect(
      half.filter(({ technique }) => technique === 'valved-bend').map(({ hole }) => hole),
    ).toEqual([1, 1, 2, 2]);
    expect(
      half.filter(({ technique }) => technique === 'overblow').map(({ hole }) => hole),
    ).toEqual([3, 4, 5, 6]);
  });

  it('throws HOLE_RANGE for a valved hole the harp does not have', () => {
    expect(() => soundings(HARP, { valved: [1, 11] })).toThrow(
      expect.objectContaining({ code: 'HOLE_RANGE', value: 11 }),
    );
  });

  it('never gives a stale answer for a harp that is frozen in part', () => {
    const change = (freezeList: boolean, freezeHoles: boolean): void => {
      const holes = structuredClone(HARP.holes).map((hole) =>
        freezeHoles ? Object.freeze(hole) : hole,
      );
      const harp = { ...HARP, holes: freezeList ? Object.freeze(holes) : holes } as Harp;
      expect(soundingsOfPitch(harp, 62, { level: 'natural' })).toHaveLength(1);
      const changed = { hole: 1, blow: 60, draw: 64 } as const;
      if (freezeList) Object.assign(harp.holes[0] as object, changed);
      else (harp.holes as unknown[])[0] = freezeHoles ? Object.freeze(changed) : changed;
      expect(soundingsOfPitch(harp, 62, { level: 'natural' })).toEqual([]);
    };
    change(true, false);
    change(false, true);
    change(false, false);
  });

  it('never gives a stale answer where all holes but one are frozen', () => {
    const holes = structuredClone(HARP.holes).map((hole, at) =>
      at === 0 ? hole : Object.freeze(hole),
    );
    const harp = { ...HARP, holes: Object.freeze(holes) } as Harp;
    expect(soundingsOfPitch(harp, 62)).not.toEqual([]);
    Object.assign(harp.holes[0] as object, { draw: 60 });
    expect(soundingsOfPitch(harp, 62, { level: 'natural' })).toEqual([]);
  });

  it('keeps what it worked out for a harp that cannot change', () => {
    expect(soundings(HARP)).toBe(soundings(HARP));
    expect(soundings(HARP, { level: 'natural' })).toBe(soundings(HARP, { level: 'natural' }));
    expect(soundings(HARP, { valved: true })).not.toBe(soundings(HARP, { valved: true }));
  });

  it('reads an unfrozen harp anew each time, so that a change of it shows', () => {
    const harp = structuredClone(HARP);
    expect(soundingsOfPitch(harp, 60)).toHaveLength(1);
    for (const reeds of harp.holes) Object.assign(reeds, { blow: reeds.blow + 1 });
    expect(soundingsOfPitch(harp, 60)).toHaveLength(0);
  });

  describe('of a harp frozen in part shows every change that can still be made', () => {
    type Loose = { holes: { hole: Hole; blow: number; draw: number }[] };
    const loose = (): Harp & Loose => structuredClone(HARP) as Harp & Loose;

    it.each<[string, (harp: Harp & Loose) => void, (harp: Harp & Loose) => void]>([
      [
        'the harp and the list are frozen, its holes are not',
        (harp) => [harp, harp.holes].forEach(Object.freeze),
        (harp) => Object.assign(harp.holes[0] as object, { blow: 50 }),
      ],
      [
        'all are frozen but one hole',
        (harp) => [harp, harp.holes, ...harp.holes.slice(1)].forEach(Object.freeze),
        (harp) => Object.assign(harp.holes[0] as object, { blow: 50 }),
      ],
      [
        'the harp and its holes are frozen, the list is not',
        (harp) => [harp, ...harp.holes].forEach(Object.freeze),
        (harp) => harp.holes.splice(0, 1, { hole: 1, blow: 50, draw: 62 }),
      ],
      [
        'the list and its holes are frozen, the harp is not',
        (harp) => [harp.holes, ...harp.holes].forEach(Object.freeze),
        (harp) => Object.assign(harp, { holes: [{ hole: 1, blow: 50, draw: 62 }] }),
      ],
    ])('%s', (_, freezePart, change) => {
      const harp = loose();
      freezePart(harp);
      for (const level of TECHNIQUE_LEVELS) {
        expect(soundings(harp, { level })[0]?.pitch).toBe(60);
        expect(soundingsOfPitch(harp, 50, { level })).toEqual([]);
      }
      change(harp);
      for (const level of TECHNIQUE_LEVELS) {
        expect(soundings(harp, { level })[0]?.pitch).toBe(50);
        expect(soundingsOfPitch(harp, 50, { level })[0]).toMatchObject({ hole: 1, pitch: 50 });
        expect(soundingsAt(harp, 1, 'blow', { level })[0]?.pitch).toBe(50);
      }
    });
  });

  it('throws OPTION_UNKNOWN for a level there is not, and names the nearest', () => {
    expect(() => soundings(HARP, { level: 'bend' as TechniqueLevel })).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN', nearest: 'bends' }),
    );
  });
});

describe('soundingsAt', () => {
  it('gives what one breath does in a hole, the unbent note first', () => {
    expect(soundingsAt(HARP, 10, 'blow').map(({ pitch }) => pitch)).toEqual([96, 95, 94]);
    expect(soundingsAt(HARP, 10, 'draw').map(({ pitch }) => pitch)).toEqual([93]);
    expect(soundingsAt(HARP, 10, 'draw', EVERYTHING).map(({ pitch }) => pitch)).toEqual([93, 97]);
  });

  it.each([0, 11, 1.5, -1, Number.NaN, '3', 'length'])('throws HOLE_RANGE for hole %j', (hole) => {
    expect(() => soundingsAt(HARP, hole as number, 'draw')).toThrow(
      expect.objectContaining({ code: 'HOLE_RANGE', where: { breath: 'draw' } }),
    );
  });

  it('throws OPTION_UNKNOWN for a breath there is not', () => {
    expect(() => soundingsAt(HARP, 1, 'suck' as Breath)).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN', where: { hole: 1 } }),
    );
  });
});

describe('soundingsOfPitch', () => {
  it('finds the doubled notes of the standard layout', () => {
    expect(soundingsOfPitch(HARP, 67).map(brief)).toEqual(['2 draw natural 0', '3 blow natural 0']);
    expect(soundingsOfPitch(HARP, 68, EVERYTHING).map(brief)).toEqual([
      '2 blow overblow 1',
      '3 draw bend 3',
    ]);
    expect(soundingsOfPitch(HARP, 72, EVERYTHING).map(brief)).toEqual([
      '3 blow overblow 1',
      '4 blow natural 0',
    ]);
    expect(soundingsOfPitch(HARP, 89, EVERYTHING).map(brief)).toEqual([
      '8 draw overdraw 1',
      '9 draw natural 0',
    ]);
  });

  it('is empty for a pitch the harp does not have', () => {
    expect(soundingsOfPitch(HARP, 63)).toEqual([]);
    expect(soundingsOfPitch(HARP, 59)).toEqual([]);
    expect(soundingsOfPitch(HARP, 0)).toEqual([]);
  });

  it.each([-1, 128, 60.5, Number.NaN, '60', 'length'])(
    'throws NUMBER_RANGE for pitch %j',
    (pitch) => {
      expect(() => soundingsOfPitch(HARP, pitch as number)).toThrow(
        expect.objectContaining({ code: 'NUMBER_RANGE' }),
      );
    },
  );
});

describe('reedsSounding', () => {
  it('names the reeds that take part in each technique', () => {
    const reeds = (hole: number, breath: Breath) =>
      soundingsAt(HARP, hole, breath, EVERYTHING).map(reedsSounding);
    expect(reeds(1, 'draw')).toEqual([['draw'], ['blow', 'draw']]);
    expect(reeds(1, 'blow')).toEqual([['blow'], ['draw']]);
    expect(reeds(7, 'draw')).toEqual([['draw'], ['blow']]);
    const valved = soundingsAt(HARP, 1, 'blow', { valved: true });
    expect(valved.map(reedsSounding)).toEqual([['blow'], ['blow'], ['blow']]);
  });
});

describe('otherBreath', () => {
  it('is its own inverse', () => {
    expect(otherBreath('draw')).toBe('blow');
    expect(otherBreath(otherBreath('draw'))).toBe('draw');
  });
});

describe('a harp of one hole', () => {
  it('sounds what its two reeds allow', () => {
    const harp = makeHarp('C', { tuning: makeTuning({ id: 'one', blow: 'C4', draw: 'E4' }) });
    expect(soundings(harp, EVERYTHING).map(({ pitch }) => pitch)).toEqual([60, 65, 64, 63, 62, 61]);
  });
});
