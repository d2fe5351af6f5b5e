import { type Chart, chartEnd, chordChanges, FORMS, makeChart } from '@reedplate/form';
import { lineEnd, parseMetre } from '@reedplate/line';
import { TWELVE_KEYS } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { DRUMS } from './drums.js';
import { makeBacking } from './make-backing.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const backings = fc
  .record({
    form: fc.constantFrom(...FORMS),
    tonic: fc.constantFrom(...TWELVE_KEYS.map(({ name }) => name)),
    choruses: fc.integer({ min: 1, max: 3 }),
    countIn: fc.integer({ min: 0, max: 4 }),
    ending: fc.boolean(),
  })
  .map(({ form, tonic, choruses, countIn, ending }) => {
    const minor = { Db: 'C#m', Ab: 'G#m', Gb: 'F#m' }[tonic as string] ?? `${tonic}m`;
    const key = (form.mode === 'minor' ? minor : tonic) as 'G';
    const chart = makeChart(form, key, { choruses });
    return { chart, countIn, ending, backing: makeBacking(chart, { countIn, ending }) };
  });

describe('laws of makeBacking', () => {
  test('makeBacking plays as many bars as the chart, the count-in and the ending have', () => {
    fc.assert(
      fc.property(backings, ({ chart, countIn, ending, backing }) => {
        const bars = chart.bars + countIn + (ending ? 1 : 0);
        expect(backing.chart?.bars).toBe(bars);
        const end = backing.chart === undefined ? 0 : chartEnd(backing.chart);
        for (const { line } of backing.parts ?? []) expect(lineEnd(line)).toBeLessThanOrEqual(end);
      }),
    );
  });

  test('makeBacking keeps the bass within an octave and a half of its lowest string, a note at a time', () => {
    fc.assert(
      fc.property(backings, ({ backing }) => {
        const bass = backing.parts?.find(({ name }) => name === 'Bass')?.line.notes ?? [];
        let end = 0;
        for (const { start, duration, pitch } of bass) {
          expect(start).toBeGreaterThanOrEqual(end);
          end = start + duration;
          expect(pitch).toBeGreaterThanOrEqual(27);
          expect(pitch).toBeLessThanOrEqual(51);
        }
      }),
    );
  });

  test('makeBacking begins each chord of two beats or more with its root in the bass', () => {
    fc.assert(
      fc.property(backings, ({ backing, countIn }) => {
        const bass = backing.parts?.find(({ name }) => name === 'Bass')?.line.notes ?? [];
        const { beatTicks } = parseMetre(backing.chart?.metre ?? '4/4');
        // A chord of one beat may already lead on to the next, a semitone below it.
        const changes = chordChanges(backing.chart as Chart).slice(countIn === 0 ? 0 : 1);
        const long = changes.filter(
          ({ start }, at) => (changes[at + 1]?.start ?? start + 2 * beatTicks) - start > beatTicks,
        );
        for (const { start, chord } of long) {
          const note = bass.find((each) => each.start === start);
          if (chord !== null) expect(note && note.pitch % 12).toBe(chord.tones[0]?.pitchClass);
        }
      }),
    );
  });

  test('makeBacking keeps time: a ride on every beat that is no count-in and no ending', () => {
    fc.assert(
      fc.property(backings, ({ chart, countIn, backing }) => {
        const drums =
          backing.parts?.find(({ percussion }) => percussion === true)?.line.notes ?? [];
        const { barTicks, beatTicks, beatsPerBar } = parseMetre(chart.metre);
        const from = (backing.chart?.pickup ?? 0) + countIn * barTicks;
        const rides = new Set(
          drums.filter(({ pitch }) => pitch === DRUMS.ride).map(({ start }) => start),
        );
        for (let beat = 0; beat < chart.bars * beatsPerBar; beat += 1) {
          expect(rides.has(from + beat * beatTicks)).toBe(true);
        }
        const clicks = drums.filter(({ pitch }) => pitch === DRUMS.sideStick);
        expect(clicks.length).toBe(countIn * beatsPerBar);
      }),
    );
  });
});
