import { makeHarp, type Sounding, soundings, TUNINGS } from '@reedplate/layout';
import { type Line, makeLine } from '@reedplate/line';
import { midi } from '@reedplate/pitch';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/sources/published.js';
import { bestPath, EFFORT_MODELS, everyHarp, fitHarps as rankHarps } from './index.js';

const C = makeHarp('C');
const ALL = soundings(C, { level: 'overbends' });

function melody(notes: string, ticks = 960): Line {
  return makeLine(
    notes.split(' ').map((name, at) => ({ start: at * ticks, duration: ticks, pitch: midi(name) })),
  );
}

const isAt =
  (breath: string, technique: string, depth = 1) =>
  (hole: number): Sounding =>
    ALL.find(
      (found) =>
        found.hole === hole &&
        found.breath === breath &&
        found.technique === technique &&
        found.depth === depth,
    ) as Sounding;

const drawBend = isAt('draw', 'bend');
const blowBend = isAt('blow', 'bend');
const overblow = isAt('blow', 'overblow');
const overdraw = isAt('draw', 'overdraw');

/** Effort of one quarter note, sounded in this one way: on a harp that has only that hole. */
function effortOf(sounding: Sounding, model: string): number {
  const harp = { ...C, holes: C.holes.filter(({ hole }) => hole === sounding.hole) };
  const path = bestPath(makeLine([{ start: 0, duration: 960, pitch: sounding.pitch }]), harp, {
    model,
    level: 'overbends',
  });
  if (!path.playable) throw new Error('not playable');
  expect(path.soundings).toEqual([[sounding]]);
  return path.effort;
}

const rising = (efforts: readonly number[]): boolean =>
  efforts.every((effort, at) => at === 0 || effort > (efforts[at - 1] as number));

// The order of the usual teaching syllabus is common practice, no source.
describe.each(EFFORT_MODELS.map(({ id }) => id))(
  'the teaching syllabus under the %s model',
  (model) => {
    const efforts = (found: readonly Sounding[]): readonly number[] =>
      found.map((sounding) => effortOf(sounding, model));

    published('practice', 'the trade', () => {
      test('bestPath finds draw bends harder on 4, 6, 1, 2 and 3, in this order', () => {
        expect(rising([0, ...efforts([4, 6, 1, 2, 3].map(drawBend))])).toBe(true);
      });

      test('bestPath finds deeper bends of a hole harder', () => {
        expect(rising(efforts([1, 2, 3].map((depth) => isAt('draw', 'bend', depth)(3))))).toBe(
          true,
        );
        expect(rising(efforts([1, 2].map((depth) => isAt('draw', 'bend', depth)(2))))).toBe(true);
        expect(rising(efforts([1, 2].map((depth) => isAt('blow', 'bend', depth)(10))))).toBe(true);
      });

      test('bestPath finds first blow bends harder than all first draw bends', () => {
        const draw = Math.max(...efforts([1, 2, 3, 4, 6].map(drawBend)));
        expect(Math.min(...efforts([8, 9, 10].map(blowBend)))).toBeGreaterThan(draw);
      });

      test('bestPath finds overblows harder than all bends: 6, 5, 4 before 1; overdraws last', () => {
        const bends = efforts(ALL.filter(({ technique }) => technique === 'bend'));
        const over = efforts([6, 5, 4, 1].map(overblow));
        const last = Math.min(...efforts([7, 9, 10].map(overdraw)));
        expect(rising([Math.max(...bends), ...over, last])).toBe(true);
      });

      test('bestPath finds sliding into a bend easier than hitting it straight on', () => {
        // 4 draw to its bend slides; 5 draw to it moves as well, so the moves are taken away.
        const within = bestPath(melody('D5 Db5'), C, { model, level: 'bends' });
        const after = bestPath(melody('Db5 D5'), C, { model, level: 'bends' });
        if (!within.playable || !after.playable) throw new Error('not playable');
        const straightOn = effortOf(drawBend(4), model);
        expect(within.effort).toBeLessThan(straightOn);
        expect(after.effort).toBeGreaterThan(straightOn);
      });
    });
  },
);

describe('published facts on bends', () => {
  published('bending-question', 'holes that bend', () => {
    // Physics Stack Exchange question 450238: draw bends on 1, 2, 3, 4, 6, blow bends on 8, 9, 10.
    test('bestPath at level bends plays the bends of the holes listed, and of no other hole', () => {
      const played = ALL.filter(({ technique }) => technique === 'bend').map(
        ({ hole, breath, pitch }) => {
          const path = bestPath(makeLine([{ start: 0, duration: 960, pitch }]), C);
          if (!path.playable) throw new Error('not playable');
          expect(path.soundings[0]?.[0]).toMatchObject({ hole, breath, technique: 'bend' });
          return `${breath} ${hole}`;
        },
      );
      expect([...new Set(played)]).toEqual([
        'draw 1',
        'draw 2',
        'draw 3',
        'draw 4',
        'draw 6',
        'blow 8',
        'blow 9',
        'blow 10',
      ]);
    });
  });
});

// What the tunings were made for: common practice, no source.
describe('tunings made for melodies in second position', () => {
  const G_MAJOR = melody('G4 A4 B4 C5 D5 E5 F#5 G5 F#5 E5 D5 C5 B4 A4 G4', 480);

  function bentNotes(tuning: string, line: Line): number {
    const [found] = rankHarps(
      line,
      [
        makeHarp(tuning.endsWith('ninth-draw') && tuning.startsWith('raised-third') ? 'G' : 'C', {
          tuning,
        }),
      ],
      { level: 'overbends' },
    ).harps;
    expect(found?.missing).toBe(0);
    return (found?.bends ?? 0) + (found?.overbends ?? 0);
  }

  published('practice', 'the trade', () => {
    test.each([
      ['standard', 4],
      ['raised-third-blow', 2],
      ['raised-fifth-draw', 2],
      ['raised-third-blow-and-fifth-draw', 0],
      ['raised-third-blow-and-fifth-and-ninth-draw', 0],
    ])(
      'fit on a C harp in %s tuning needs %i bent notes for G major up and down',
      (tuning, bent) => {
        expect(bentNotes(tuning, G_MAJOR)).toBe(bent);
      },
    );

    test('fitHarps gives the altered tunings less effort than the standard one, the combined one least', () => {
      const efforts = ['standard', 'raised-third-blow', 'raised-third-blow-and-fifth-draw'].map(
        (tuning) =>
          rankHarps(G_MAJOR, [makeHarp('C', { tuning })], { level: 'overbends' }).harps[0]
            ?.effort ?? NaN,
      );
      expect(rising([...efforts].reverse())).toBe(true);
    });

    test('fitHarps picks unbent notes: first position for a major scale from hole 4, common practice', () => {
      const scale = melody('C5 D5 E5 F5 G5 A5 B5 C6');
      const [best] = rankHarps(scale, everyHarp(), { model: 'beginner' }).harps;
      expect([best?.harp.key, best?.bends]).toEqual(['C', 0]);
    });

    test.each([
      ['a lick on the flat third and seventh', 'G4 Bb4 B4 D5 F5 D5 C5 G4'],
      ['a low riff on the draw chord', 'D4 F4 G4 Bb4 G4 F4 D4 G4'],
    ])(
      'fit picks up the C harp, cross harp, for a blues in G: %s (common practice)',
      (_, notes) => {
        const [best, next] = rankHarps(melody(notes), everyHarp()).harps;
        expect(best).toMatchObject({ missing: 0, harp: { key: 'C' } });
        const isClear = (next?.missing ?? 0) > 0 || (next?.effort ?? 0) > (best?.effort ?? 0);
        expect(isClear).toBe(true);
      },
    );

    test('fitHarps over all tunings knows every one of the catalogue', () => {
      const tunings = TUNINGS.map(({ id }) => id);
      const found = rankHarps(G_MAJOR, everyHarp({ tunings }), { count: 12 * tunings.length });
      expect(new Set(found.harps.map(({ harp }) => harp.tuning))).toEqual(new Set(tunings));
    });
  });
});
