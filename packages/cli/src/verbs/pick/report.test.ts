import { makeChart } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { midi } from '@reedplate/pitch';
import { pickHarps } from '@reedplate/position';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { charts, keys, levels, tunings } from '../../shared/arbitraries.fixture.js';
import { pickReport } from './report.js';

describe('pickReport', () => {
  test('pickReport ranks the harps as pickHarps does, with weights to a thousandth', () => {
    fc.assert(
      fc.property(charts, levels, tunings, (chart, level, tuning) => {
        const options = { chart, level, tuning };
        const { picks } = pickReport(chart.key, options);
        const known = pickHarps(chart.key, options);
        expect(picks.map(({ harp, position }) => [harp.key, position])).toEqual(
          known.map(({ harp, position }) => [harp.key, position]),
        );
        expect(picks.map(({ weight }) => weight)).toEqual(
          known.map(({ weight }) => Math.round(weight * 1000) / 1000),
        );
      }),
      { numRuns: 30 },
    );
  });

  test('pickReport counts in its reasons as many natural tones as its data hold', () => {
    fc.assert(
      fc.property(keys, levels, (key, level) => {
        for (const { reasons, chords } of pickReport(key, { level }).picks) {
          const tones = chords.flatMap((chord) => chord.tones);
          const natural = tones.filter(({ best }) => best === 'natural').length;
          expect(reasons).toContain(`${natural} of ${tones.length} chord tones are natural notes`);
        }
      }),
      { numRuns: 20 },
    );
  });

  test('pickReport names each missing and each bent tone once, and only where there is one', () => {
    fc.assert(
      fc.property(keys, levels, (key, level) => {
        for (const { reasons, chords } of pickReport(key, { level }).picks) {
          const said = (label: string) =>
            reasons.find((reason) => reason.startsWith(`${label}: `))?.split(', ').length ?? 0;
          const tones = chords.flatMap((chord) => chord.tones);
          const missing = tones.filter(({ best }) => best === 'missing').length;
          const natural = tones.filter(({ best }) => best === 'natural').length;
          expect(said('missing')).toBe(missing);
          expect(said('bent')).toBe(tones.length - natural - missing);
        }
      }),
      { numRuns: 20 },
    );
  });

  test('pickReport says of every chord whether it can be played whole', () => {
    const [cross] = pickReport('G').picks;
    expect(cross?.reasons.slice(0, 2)).toEqual([
      'whole chords: G7 on draw 1-5, C7 on blow 1-10 (no b7)',
      'no whole D7',
    ]);
  });

  test('pickReport names the first three positions as the trade does, and no other but the twelfth', () => {
    const names = new Map(
      pickReport('C').picks.map(({ position, positionName }) => [position, positionName]),
    );
    expect([1, 2, 3].map((position) => names.get(position as 1))).toEqual([
      'straight harp',
      'cross harp',
      'slant harp',
    ]);
    expect([4, 6, 7, 8].map((position) => names.get(position as 4))).toEqual(['', '', '', '']);
  });

  test('pickReport speaks first of the line, where one is given', () => {
    const line = makeLine([{ start: 0, duration: 960, pitch: midi('G4') }]);
    const [best] = pickReport('G', { line, own: ['C'] }).picks;
    expect(best?.reasons[0]).toBe('the line: 100 % natural, 0 % bent, 0 % overbent, 0 % missing');
    expect(best?.line?.natural).toBe(1);
    expect(pickReport('G', { own: ['C'] }).picks[0]).not.toHaveProperty('line');
  });

  test.each([
    ['G3', 'the line an octave up:'],
    ['G1', 'the line 3 octaves up:'],
    ['G8', 'octaves down:'],
  ] as const)('pickReport says by how much a line on %s is moved', (note, moved) => {
    const line = makeLine([{ start: 0, duration: 960, pitch: midi(note) }]);
    expect(pickReport('G', { line, own: ['C'] }).picks[0]?.reasons[0]).toContain(moved);
  });

  test('pickReport goes by the chart where one is given', () => {
    const chart = makeChart('minor-flat-six', 'Am');
    const [best] = pickReport('Am', { chart }).picks;
    expect(best?.chords.map(({ symbol }) => symbol)).toContain('Am7');
  });

  test('pickReport takes harps as data too', () => {
    const own = [makeHarp('F', { register: 'low' }), makeHarp('Am', { tuning: 'natural-minor' })];
    const { picks } = pickReport('A', { own });
    expect(picks.map(({ harp }) => harp.tuning).sort()).toEqual(['natural-minor', 'standard']);
  });
});
