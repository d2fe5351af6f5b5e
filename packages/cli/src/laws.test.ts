import type { Score } from '@reedplate/chord-tone';
import { FORMS, makeChart } from '@reedplate/form';
import { makeHarp, transposeHarp } from '@reedplate/layout';
import { makeLine, transposeLine } from '@reedplate/line';
import { type KeyName, parseKey, TWELVE_KEYS, transposeKey } from '@reedplate/pitch';
import { positionOf } from '@reedplate/position';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chartReport } from './verbs/chart/report.js';
import { mapReport } from './verbs/map/report.js';
import { pickReport } from './verbs/pick/report.js';
import { practiceReport } from './verbs/practice/report.js';
import { scoreReport } from './verbs/score/report.js';
import { targetReport } from './verbs/target/report.js';

const shifts = fc.integer({ min: 0, max: 11 });
const positions = fc.integer({ min: 0, max: 11 });
const majorForms = fc.constantFrom(...FORMS.filter(({ mode }) => mode === 'major'));
const C = makeHarp('C');

/** The key some fifths above C, and the same moved by semitones. */
function songKeys(fifths: number, shift: number) {
  const key = transposeKey(parseKey('C'), fifths * 7);
  return [key, transposeKey(key, shift)] as const;
}

const lines = fc
  .array(
    fc.record({
      start: fc.integer({ min: 0, max: 12 * 3840 - 1 }),
      duration: fc.integer({ min: 1, max: 4000 }),
      pitch: fc.integer({ min: 60, max: 96 }),
    }),
    { minLength: 1, maxLength: 40 },
  )
  .map((notes) => makeLine(notes));

/** What of a score must not change: all but the names of what was moved. */
function plainScore({
  total,
  following,
  confidence,
  measures,
  notes,
  changes,
  bars,
  feedback,
}: Score) {
  return {
    total,
    following,
    confidence,
    measures,
    classes: notes.map((note) => [note.index, note.degree, note.class, note.credit]),
    changes: changes.map(({ numeral, landing, shown }) => [numeral, landing, shown]),
    bars: bars.map(({ bar, fit }) => [bar, fit]),
    feedback: feedback.map(({ code, bars: where, beat, suggestions }) => [
      code,
      where,
      beat,
      suggestions.map(({ degree, tab }) => [degree, tab]),
    ]),
  };
}

describe('laws of moving harp and song together', () => {
  test('mapReport: the harp moved by semitones has every pitch moved, tabs and degrees unchanged', () => {
    fc.assert(
      fc.property(shifts, positions, (shift, fifths) => {
        const [key, moved] = songKeys(fifths, shift);
        const here = mapReport(C, { key });
        const there = mapReport(transposeHarp(C, shift), { key: moved });
        const expected = here.holes.map(({ soundings }) =>
          soundings.map(({ tab, degree, pitch }) => ({ tab, degree, pitch: pitch + shift })),
        );
        const found = there.holes.map(({ soundings }) =>
          soundings.map(({ tab, degree, pitch }) => ({ tab, degree, pitch })),
        );
        expect(found).toEqual(expected);
      }),
    );
  });

  test('positionOf does not change', () => {
    fc.assert(
      fc.property(shifts, positions, (shift, fifths) => {
        const [key, moved] = songKeys(fifths, shift);
        expect(positionOf(transposeHarp(C, shift), moved)).toBe(positionOf(C, key));
      }),
    );
  });

  test('chartReport: numerals and times do not change, roots move', () => {
    fc.assert(
      fc.property(majorForms, shifts, positions, (form, shift, fifths) => {
        const [key, moved] = songKeys(fifths, shift);
        const here = chartReport(makeChart(form, key)).chart.spans;
        const there = chartReport(makeChart(form, moved)).chart.spans;
        expect(there.map(({ chord, ...rest }) => rest)).toEqual(
          here.map(({ chord, ...rest }) => rest),
        );
        expect(there.map(({ chord }) => chord?.tones.map(({ pitchClass }) => pitchClass))).toEqual(
          here.map(({ chord }) => chord?.tones.map(({ pitchClass }) => (pitchClass + shift) % 12)),
        );
      }),
    );
  });

  test.each(['basic', 'quick-change'])(
    'targetReport of %s: the same tabs in all twelve keys',
    (id) => {
      const plain = (key: KeyName, harp: ReturnType<typeof makeHarp>) =>
        targetReport(makeChart(id, key), harp).bars.map(({ bar, chords }) => ({
          bar,
          chords: chords.map(({ numeral, tones, whole, warnings }) => ({
            numeral,
            tabs: tones.map(({ degree, tab }) => [degree, ...tab]),
            whole,
            warnings: warnings.map(({ code }) => code),
          })),
        }));
      const inG = plain('G', C);
      for (const key of TWELVE_KEYS) {
        expect(plain(key.name, makeHarp(transposeKey(key, -7)))).toEqual(inG);
      }
    },
  );

  test('practiceReport: the same tabs in all twelve keys, for every kind', () => {
    for (const kind of ['roots', 'chords', 'guide-tones'] as const) {
      const tabs = TWELVE_KEYS.map((key) => {
        const chart = makeChart('quick-change', key);
        return practiceReport(chart, makeHarp(transposeKey(key, -7)), { kind }).moves.map(
          ({ tab }) => tab,
        );
      });
      for (const inKey of tabs) expect(inKey).toEqual(tabs[0]);
    }
  });

  test('pickReport: the same positions in the same order in all twelve keys', () => {
    const orders = TWELVE_KEYS.map((key) =>
      pickReport(key).picks.map(({ position, weight }) => ({ position, weight })),
    );
    for (const order of orders) expect(order).toEqual(orders[0]);
  });

  test('scoreReport: a score never changes when line, chart and harp move together', () => {
    fc.assert(
      fc.property(lines, fc.integer({ min: -5, max: 6 }), (line, shift) => {
        const [key, moved] = songKeys(1, shift);
        const here = scoreReport(line, makeChart('quick-change', key), { harp: C });
        const there = scoreReport(transposeLine(line, shift), makeChart('quick-change', moved), {
          harp: transposeHarp(C, shift),
        });
        expect(plainScore(there.score)).toEqual(plainScore(here.score));
      }),
    );
  });

  test('transposeLine undoes itself', () => {
    fc.assert(
      fc.property(lines, fc.integer({ min: -12, max: 12 }), (line, shift) => {
        expect(transposeLine(transposeLine(line, shift), -shift)).toEqual(line);
      }),
    );
  });
});
