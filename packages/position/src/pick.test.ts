import { FORMS, formById, makeChart, withTriads } from '@reedplate/form';
import { makeHarp, TECHNIQUE_LEVELS } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { midi, TWELVE_KEYS, transposeKey } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import {
  EASE_OF_TECHNIQUE,
  type HarpPick,
  PICK_WEIGHTS,
  pickForKeys,
  pickHarps,
  planSetList,
} from './index.js';

const failure = (code: string) => expect.objectContaining({ code });
const brief = ({ position, harp }: HarpPick): string => `${position} ${harp.key}`;

describe('pickHarps', () => {
  it('puts cross harp first for a dominant blues in every key, at every level', () => {
    for (const key of TWELVE_KEYS) {
      for (const level of TECHNIQUE_LEVELS) {
        const [best] = pickHarps(key, { level });
        expect(best?.position).toBe(2);
        expect(best?.harp.key).toBe(transposeKey(key, -7).name);
      }
    }
  });

  it.each(['basic', 'quick-change'])(
    'puts cross harp first for the form %s, in sevenths and in triads',
    (id) => {
      const form = formById(id);
      for (const played of [form, withTriads(form)]) {
        const chart = makeChart(played, 'G');
        for (const level of TECHNIQUE_LEVELS) {
          expect(brief(pickHarps('G', { chart, level })[0] as HarpPick)).toBe('2 C');
        }
      }
    },
  );

  it('puts slant harp first for a minor blues on standard harps', () => {
    expect(brief(pickHarps('Dm')[0] as HarpPick)).toBe('3 C');
  });

  // Common practice in teaching: 3rd, then 4th and 5th, then 2nd; 6th has nothing to rest on.
  it('ranks 3rd, 4th, 5th and then 2nd position for a minor blues, and 6th after them', () => {
    for (const key of ['Gm', 'Am', 'Em'] as const) {
      const order = pickHarps(key).map(({ position }) => position);
      expect(order.filter((position) => [2, 3, 4, 5, 6].includes(position))).toEqual([
        3, 4, 5, 2, 6,
      ]);
    }
  });

  it('puts the natural minor harp first where it is owned', () => {
    const own = ['C', 'D', 'G', 'Dm natural-minor'];
    expect(brief(pickHarps('Dm', { own })[0] as HarpPick)).toBe('2 Dm');
  });

  it('puts straight harp first for a major tune without blue notes', () => {
    const options = { scale: 'major', numerals: ['I', 'IV', 'V'], level: 'natural' } as const;
    expect(brief(pickHarps('G', options)[0] as HarpPick)).toBe('1 G');
  });

  it('judges every form of the catalogue without a special case for any', () => {
    for (const form of FORMS) {
      const chart = makeChart(form, form.mode === 'minor' ? 'Am' : 'A');
      const picks = pickHarps(chart.key, { chart });
      expect(picks).toHaveLength(12);
      const shares = picks[0]?.chords.map(({ share }) => share) ?? [];
      expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    }
  });

  it('says of each chord which tones are natural, bent and missing, and whether it is whole', () => {
    const [cross] = pickHarps('G');
    expect(cross?.chords.map(({ symbol, share, whole }) => [symbol, share, whole])).toEqual([
      ['G7', 7 / 12, { breath: 'draw', from: 1, to: 5 }],
      ['C7', 3 / 12, { breath: 'blow', from: 1, to: 10 }],
      ['D7', 2 / 12, null],
    ]);
    expect(
      cross?.chords[2]?.tones.map(({ degree, name, best }) => `${degree} ${name} ${best}`),
    ).toEqual(['1 D natural', '3 F# bend', '5 A natural', 'b7 C natural']);
    const [natural] = pickHarps('G', { level: 'natural' });
    expect(natural?.chords[2]?.tones[1]).toMatchObject({ best: 'missing', ease: 0 });
  });

  it('says what of the scale is missing', () => {
    const [natural] = pickHarps('G', { level: 'natural' });
    expect(natural?.scale).toMatchObject({ name: 'minor blues', missing: ['b3', 'b5'] });
    const [bends] = pickHarps('G');
    expect(bends?.scale.missing).toEqual([]);
    expect(bends?.scale.incomplete).toEqual(['b3', 'b5']);
  });

  it('chooses among the harps owned, by name or as data', () => {
    const own = ['D', makeHarp('A'), 'low F'];
    expect(pickHarps('A', { own }).map(brief)).toEqual(['2 D', '1 A', '5 F']);
  });

  it('reads Roman numerals in equal shares', () => {
    const [best] = pickHarps('G', { numerals: ['I7', 'IV7', 'I7', 'IV7'] });
    expect(best?.chords.map(({ symbol, share }) => [symbol, share])).toEqual([
      ['G7', 0.5],
      ['C7', 0.5],
    ]);
  });

  it('goes by a line where one is given, in the octave that suits it', () => {
    const line = makeLine(
      ['C3', 'E3', 'G3', 'B3'].map((note, index) => ({
        start: 960 * index,
        duration: 960,
        pitch: midi(note),
      })),
    );
    const [best] = pickHarps('C', { line, level: 'natural' });
    expect(brief(best as HarpPick)).toBe('1 C');
    expect(best?.line).toEqual({
      octaves: 1,
      natural: 1,
      bent: 0,
      overbent: 0,
      missing: 0,
      ease: 1,
    });
  });

  it('shares a line out by time into natural, bent, overbent and missing', () => {
    const notes = [
      { start: 0, duration: 500, pitch: midi('C4') },
      { start: 500, duration: 200, pitch: midi('Db4') },
      { start: 700, duration: 100, pitch: midi('Eb4') },
      { start: 800, duration: 200, pitch: midi('D7') },
    ];
    const options = { line: makeLine(notes), own: ['C'], level: 'overbends' } as const;
    const [pick] = pickHarps('C', options);
    const shares = { natural: 0.5, bent: 0.2, overbent: 0.1, missing: 0.2 };
    expect(pick?.line).toMatchObject({ octaves: 0, ...shares });
  });

  it('is frozen plain data', () => {
    const [best] = pickHarps('G');
    expect(Object.isFrozen(best)).toBe(true);
    expect(JSON.parse(JSON.stringify(best))).toEqual(best);
  });

  it('throws for a key, scale, tuning, harp, numeral and level there is not', () => {
    expect(() => pickHarps('H' as 'B')).toThrow(failure('KEY_UNKNOWN'));
    expect(() => pickHarps('G', { scale: 'blue' })).toThrow(failure('SCALE_UNKNOWN'));
    expect(() => pickHarps('G', { tuning: 'nope' })).toThrow(failure('TUNING_UNKNOWN'));
    expect(() => pickHarps('G', { own: ['C D'] })).toThrow(failure('TUNING_UNKNOWN'));
    expect(() => pickHarps('G', { own: ['low'] })).toThrow(failure('HARP_INVALID'));
    expect(() => pickHarps('G', { numerals: ['VIII'] })).toThrow(failure('NUMERAL_UNKNOWN'));
    expect(() => pickHarps('G', { level: 'all' as never })).toThrow(failure('OPTION_UNKNOWN'));
  });

  it('throws for a song without a chord and a line without a note', () => {
    expect(() => pickHarps('G', { numerals: [] })).toThrow(failure('CHART_INVALID'));
    expect(() => pickHarps('G', { line: makeLine([]) })).toThrow(failure('LINE_EMPTY'));
  });

  it('throws LIST_EMPTY rather than picking none where no harp is owned', () => {
    expect(() => pickHarps('G', { own: [] })).toThrow(failure('LIST_EMPTY'));
  });
});

describe('pickHarps with weights', () => {
  it('counts only what it is told to', () => {
    const weights = { chordTones: 0, wholeChords: 0, scale: 1, home: 0 };
    const picks = pickHarps('G', { weights });
    expect(picks.every(({ weight, scale }) => weight === scale.ease)).toBe(true);
  });

  it('completes the weights from the defaults', () => {
    const given = pickHarps('G', { weights: { line: 5 } }).map(({ weight }) => weight);
    expect(given).toEqual(pickHarps('G').map(({ weight }) => weight));
  });

  it.each([
    { scale: -1 },
    { scale: Number.NaN },
    { line: Number.POSITIVE_INFINITY },
    { chordTones: 0, wholeChords: 0, scale: 0, home: 0 },
  ])('throws NUMBER_RANGE for %j', (weights) => {
    expect(() => pickHarps('G', { weights })).toThrow(failure('NUMBER_RANGE'));
  });
});

describe('EASE_OF_TECHNIQUE', () => {
  it('falls from the unbent note to the overdraw, and stays above nothing', () => {
    const { natural, bend, overblow, overdraw } = EASE_OF_TECHNIQUE;
    const valved = EASE_OF_TECHNIQUE['valved-bend'];
    expect(natural).toBe(1);
    const falling = [natural, bend, valved, overblow, overdraw, 0];
    expect(falling).toEqual([...falling].sort((a, b) => b - a));
    expect(new Set(falling).size).toBe(falling.length);
  });
});

describe('PICK_WEIGHTS', () => {
  it('adds up to one without a line', () => {
    const { chordTones, wholeChords, scale, home } = PICK_WEIGHTS;
    expect(chordTones + wholeChords + scale + home).toBeCloseTo(1, 12);
  });
});

describe('pickForKeys', () => {
  it('finds one harp for two keys, the longer section counting more', () => {
    const keys = (first: number, second: number) =>
      pickForKeys([
        { key: 'G', length: first },
        { key: 'A', length: second },
      ]).map(({ harp }) => harp.key);
    expect(keys(9, 1)[0]).toBe('C');
    expect(keys(1, 9)[0]).toBe('D');
  });

  it('tells how the harp suits each section', () => {
    const [best] = pickForKeys([{ key: 'G' }, { key: 'C' }]);
    expect(best?.sections.map(({ position }) => position)).toEqual([2, 1]);
    const mean = (best?.sections ?? []).reduce((sum, { weight }) => sum + weight / 2, 0);
    expect(best?.weight).toBeCloseTo(mean, 12);
  });

  it('counts a section of no stated length as one', () => {
    const [best] = pickForKeys([{ key: 'G', length: 3 }, { key: 'C' }], { own: ['C'] });
    const [verse, bridge] = (best?.sections ?? []).map(({ weight }) => weight);
    expect(best?.weight).toBeCloseTo((3 * Number(verse) + Number(bridge)) / 4, 12);
  });

  it('names itself where it does not know an option', () => {
    expect(() => pickForKeys([{ key: 'G' }], { levle: 'bends' } as never)).toThrow(
      expect.objectContaining({
        code: 'OPTION_UNKNOWN',
        expected: expect.stringContaining('an option of pickForKeys'),
        nearest: 'level',
      }),
    );
  });

  it('throws LIST_EMPTY without a section and NUMBER_RANGE for a length', () => {
    expect(() => pickForKeys([])).toThrow(failure('LIST_EMPTY'));
    expect(() => pickForKeys([{ key: 'G' }], { own: [] })).toThrow(failure('LIST_EMPTY'));
    for (const length of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => pickForKeys([{ key: 'G', length }])).toThrow(failure('NUMBER_RANGE'));
    }
  });
});

describe('planSetList', () => {
  const SET = (['G', 'G', 'D', 'A', 'E'] as const).map((key, index) => ({
    key,
    title: `Song ${index + 1}`,
  }));

  it('gives every song its best harp where nothing less will do', () => {
    const plan = planSetList(SET, { leastShare: 1 });
    expect(plan.steps.map(({ pick }) => brief(pick))).toEqual(['2 C', '2 C', '2 G', '2 D', '2 A']);
    expect(plan.steps.map(({ changes }) => changes)).toEqual([false, false, true, true, true]);
    expect(plan.changes).toBe(3);
  });

  it('stays on a harp while it is good enough', () => {
    const plan = planSetList(SET);
    expect(plan.changes).toBeLessThan(3);
    for (const { pick, index } of plan.steps) {
      const best = pickHarps(SET[index]?.key ?? 'C')[0]?.weight ?? 0;
      expect(pick.weight).toBeGreaterThanOrEqual(0.85 * best);
    }
  });

  it('keeps titles, places and the sum of the weights', () => {
    const plan = planSetList(SET);
    expect(plan.steps.map(({ index, title }) => `${index} ${title}`)[4]).toBe('4 Song 5');
    const sum = plan.steps.reduce((total, { pick }) => total + pick.weight, 0);
    expect(plan.weight).toBeCloseTo(sum, 12);
    expect(planSetList([{ key: 'G' }]).steps[0]).not.toHaveProperty('title');
  });

  it('takes a set of one and a single harp', () => {
    const plan = planSetList([{ key: 'G' }, { key: 'C' }], { own: ['C'] });
    expect(plan.steps.map(({ pick }) => brief(pick))).toEqual(['2 C', '1 C']);
    expect(plan.changes).toBe(0);
  });

  it('throws LIST_EMPTY without songs or harps, NUMBER_RANGE for a share', () => {
    expect(() => planSetList([])).toThrow(failure('LIST_EMPTY'));
    expect(() => planSetList(SET, { own: [] })).toThrow(failure('LIST_EMPTY'));
    for (const leastShare of [-0.1, 1.1, Number.NaN]) {
      expect(() => planSetList(SET, { leastShare })).toThrow(failure('NUMBER_RANGE'));
    }
  });
});
