import { chartAvailability, type Score, scoreLine } from '@reedplate/chord-tone';
import { FORMS, makeChart } from '@reedplate/form';
import { makeHarp, transposeHarp } from '@reedplate/layout';
import { makeLine, transposeLine } from '@reedplate/line';
import { type KeyName, parseKey, TWELVE_KEYS, transposeKey } from '@reedplate/pitch';
import { harpMap, pickHarps, positionOf } from '@reedplate/position';
import { practiceLine } from '@reedplate/practice';
import { formatTab, markOf } from '@reedplate/tab';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

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
    bars: bars.map(({ bar, chordFit }) => [bar, chordFit]),
    feedback: feedback.map(({ code, bars: where, beat, suggestions }) => [
      code,
      where,
      beat,
      suggestions.map(({ degree, tab }) => [degree, tab]),
    ]),
  };
}

describe('laws of moving harp and song together', () => {
  test('harpMap: the harp moved by semitones has every pitch moved, tabs and degrees unchanged', () => {
    fc.assert(
      fc.property(shifts, positions, (shift, fifths) => {
        const [key, moved] = songKeys(fifths, shift);
        const here = harpMap(C, { key });
        const there = harpMap(transposeHarp(C, shift), { key: moved });
        const expected = here.holes.map(({ soundings }) =>
          soundings.map(({ name, pitch, ...rest }) => ({ ...rest, pitch: pitch + shift })),
        );
        const found = there.holes.map(({ soundings }) =>
          soundings.map(({ name, ...rest }) => rest),
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

  test('makeChart: numerals and times do not change, roots move', () => {
    fc.assert(
      fc.property(majorForms, shifts, positions, (form, shift, fifths) => {
        const [key, moved] = songKeys(fifths, shift);
        const here = makeChart(form, key).spans;
        const there = makeChart(form, moved).spans;
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
    'chartAvailability of %s: the same soundings in all twelve keys',
    (id) => {
      const plain = (key: KeyName, harp: ReturnType<typeof makeHarp>) =>
        chartAvailability(makeChart(id, key), harp).map(
          ({ bars, numerals, targets, whole, warnings }) => ({
            bars,
            numerals,
            targets: targets.map(({ degree, sounding }) => [degree, markOf(sounding)]),
            whole: whole.map(({ breath, holes, lacks, adds }) => ({ breath, holes, lacks, adds })),
            warnings: warnings.map(({ code }) => code),
          }),
        );
      const inG = plain('G', C);
      for (const key of TWELVE_KEYS) {
        expect(plain(key.name, makeHarp(transposeKey(key, -7)))).toEqual(inG);
      }
    },
  );

  test('practiceLine: the same tabs in all twelve keys, for every kind', () => {
    for (const kind of ['roots', 'chords', 'guide-tones'] as const) {
      const tabs = TWELVE_KEYS.map((key) => {
        const chart = makeChart('quick-change', key);
        const { steps } = practiceLine(chart, makeHarp(transposeKey(key, -7)), { kind });
        return formatTab(steps.map(({ soundings }) => soundings.map(markOf)));
      });
      for (const inKey of tabs) expect(inKey).toEqual(tabs[0]);
    }
  });

  test('pickHarps: the same positions in the same order in all twelve keys', () => {
    const orders = TWELVE_KEYS.map((key) =>
      pickHarps(key).map(({ position, weight }) => ({ position, weight })),
    );
    for (const order of orders) expect(order).toEqual(orders[0]);
  });

  test('scoreLine: a score never changes when line, chart and harp move together', () => {
    fc.assert(
      fc.property(lines, fc.integer({ min: -5, max: 6 }), (line, shift) => {
        const [key, moved] = songKeys(1, shift);
        const here = scoreLine(line, makeChart('quick-change', key), { harp: C });
        const there = scoreLine(transposeLine(line, shift), makeChart('quick-change', moved), {
          harp: transposeHarp(C, shift),
        });
        expect(plainScore(there)).toEqual(plainScore(here));
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
