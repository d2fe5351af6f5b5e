import { type Chart, FORMS, makeChart } from '@reedplate/form';
import { makeHarp, transposeHarp } from '@reedplate/layout';
import { parseKey, TWELVE_KEYS, toPitchClass, transposeKey } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { passagesByBeat } from './passage.js';
import { practiceLine } from './practice-line.js';

const anyTonic = fc.constantFrom(...TWELVE_KEYS.map(({ tonic }) => tonic));

/** A chart of any form of the catalogue in 4/4, in any key, once or twice through. */
const anyChart: fc.Arbitrary<Chart> = fc
  .record({
    form: fc.constantFrom(...FORMS.filter(({ metre }) => metre === '4/4').map(({ id }) => id)),
    key: anyTonic,
    choruses: fc.integer({ min: 1, max: 2 }),
  })
  .map(({ form, key, choruses }) => makeChart(form, key, { choruses }));

/** The same form in a key so many semitones higher. */
function moveChart({ form, key, choruses }: Chart, semitones: number): Chart {
  return makeChart(form, transposeKey(parseKey(key), semitones), { choruses });
}

describe('practiceLine', () => {
  it('plays nothing but tones of the chord at hand, for its whole length', () => {
    fc.assert(
      fc.property(
        anyChart,
        anyTonic,
        fc.constantFrom('roots', 'chords', 'guide-tones', 'arpeggios'),
        (chart, key, kind) => {
          const { steps, line } = practiceLine(chart, makeHarp(key), { kind, level: 'overbends' });
          for (const { chord, soundings, degrees } of steps) {
            const tones = new Map(chord.tones.map((tone) => [tone.pitchClass, tone.degree]));
            expect(soundings.map(({ pitch }) => tones.get(toPitchClass(pitch)))).toEqual(degrees);
          }
          const held = steps.reduce((sum, { duration }) => sum + duration, 0);
          const sounding = chart.spans.filter(({ chord }) => chord !== null);
          expect(held).toBe(sounding.reduce((sum, { start, end }) => sum + end - start, 0));
          expect(line.notes.length).toBe(steps.flatMap(({ soundings }) => soundings).length);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('plays arpeggios that rise tone by tone before they turn', () => {
    fc.assert(
      fc.property(anyChart, anyTonic, (chart, key) => {
        const { steps } = practiceLine(chart, makeHarp(key), {
          kind: 'arpeggios',
          level: 'overbends',
          lowest: 0,
        });
        for (const passage of passagesByBeat(chart)) {
          const [from] = passage;
          const at = steps.findIndex(({ start }) => start === from.start);
          const rising = Math.min(passage.length, from.span.chord.tones.length);
          const pitches = steps
            .slice(at, at + rising)
            .map(({ soundings }) => soundings[0]?.pitch ?? 0);
          const degrees = steps.slice(at, at + rising).map((step) => step.degrees[0]);
          expect([...pitches].sort((a, b) => a - b)).toEqual(pitches);
          expect(new Set(degrees).size).toBe(rising);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('refuses a chart that is none', () => {
    const chart = makeChart('basic', 'G');
    const broken = { ...chart, spans: [] };
    const refused = expect.objectContaining({ code: 'CHART_INVALID', where: { path: 'spans' } });
    expect(() => practiceLine(broken, makeHarp('C'))).toThrow(refused);
  });

  it('gives the same holes when chart and harp move together', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 11 }), (semitones) => {
        const chart = makeChart('quick-change', 'G');
        const holesOf = (on: Chart, harp = makeHarp('C')): unknown =>
          practiceLine(on, harp, { kind: 'guide-tones' }).steps.map(({ soundings }) =>
            soundings.map(({ hole, breath }) => `${breath} ${hole}`),
          );
        const moved = moveChart(chart, semitones);
        expect(holesOf(moved, transposeHarp(makeHarp('C'), semitones))).toEqual(holesOf(chart));
      }),
    );
  });
});
