import { type Chart, chartEnd, chordChanges, FORMS, makeChart } from '@reedplate/form';
import { lineEnd, parseMetre } from '@reedplate/line';
import { TWELVE_KEYS } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { BASS_RANGE } from './bass.js';
import { COMPING_RANGE } from './comping.js';
import { DRUMS } from './drums.js';
import { GROOVES } from './grooves.js';
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
    seed: fc.integer(),
    groove: fc.option(fc.constantFrom(...GROOVES.filter(({ parts }) => parts !== 3)), {
      nil: undefined,
    }),
  })
  .map(({ form, tonic, choruses, countIn, ending, groove, seed }) => {
    const minor = { Db: 'C#m', Ab: 'G#m', Gb: 'F#m' }[tonic as string] ?? `${tonic}m`;
    const key = (form.mode === 'minor' ? minor : tonic) as 'G';
    const chart = makeChart(form, key, { choruses });
    const options = { countIn, ending, seed, ...(groove === undefined ? {} : { groove }) };
    return { chart, countIn, ending, backing: makeBacking(chart, options) };
  });

describe('laws of makeBacking', () => {
  test('makeBacking plays as many bars as the chart, the count-in and the ending have', () => {
    fc.assert(
      fc.property(backings, ({ chart, countIn, ending, backing }) => {
        expect(backing.chart?.bars).toBe(chart.bars + (ending ? 1 : 0));
        const { barTicks } = parseMetre(chart.metre);
        const end = chartEnd(backing.chart as Chart) + countIn * barTicks;
        for (const { line } of backing.parts ?? []) {
          expect(lineEnd(line)).toBeLessThanOrEqual(end);
          expect(line.countIn ?? 0).toBe(countIn);
        }
      }),
    );
  });

  test('makeBacking keeps the bass within its strings, a note at a time, with no leap over an octave', () => {
    fc.assert(
      fc.property(backings, ({ backing }) => {
        const bass = backing.parts?.find(({ name }) => name === 'Bass')?.line.notes ?? [];
        let end = 0;
        let before: number | undefined;
        for (const { start, duration, pitch } of bass.slice(0, -1)) {
          expect(start).toBeGreaterThanOrEqual(end);
          end = start + duration;
          expect(pitch).toBeGreaterThanOrEqual(BASS_RANGE.lowest);
          expect(pitch).toBeLessThanOrEqual(BASS_RANGE.highest);
          expect(Math.abs(pitch - (before ?? pitch))).toBeLessThanOrEqual(12);
          before = pitch;
        }
      }),
    );
  });

  test('makeBacking keeps the chords between bass and harmonica', () => {
    fc.assert(
      fc.property(backings, ({ backing }) => {
        const chords = backing.parts?.find(({ name }) => name === 'Comping')?.line.notes ?? [];
        for (const { pitch } of chords) {
          expect(pitch).toBeGreaterThanOrEqual(COMPING_RANGE.lowest);
          expect(pitch).toBeLessThanOrEqual(COMPING_RANGE.highest);
        }
      }),
    );
  });

  test('makeBacking sounds nothing in a break, count-in apart', () => {
    fc.assert(
      fc.property(backings, ({ chart, backing, countIn }) => {
        const breaks = (backing.chart?.spans ?? []).filter(({ chord }) => !chord);
        const before = countIn * parseMetre(chart.metre).barTicks;
        for (const { line } of backing.parts ?? []) {
          for (const { start: at, duration } of line.notes) {
            const start = at - before;
            const inBreak = breaks.find(
              (span) => start < span.end && start + duration > span.start,
            );
            expect(inBreak).toBeUndefined();
          }
        }
      }),
    );
  });

  test('makeBacking begins each chord of two beats or more with its root in the bass', () => {
    fc.assert(
      fc.property(backings, ({ backing, countIn }) => {
        const bass = backing.parts?.find(({ name }) => name === 'Bass')?.line.notes ?? [];
        const { barTicks, beatTicks } = parseMetre(backing.chart?.metre ?? '4/4');
        // A chord of one beat may already lead on to the next, a semitone below it.
        const changes = chordChanges(backing.chart as Chart);
        const long = changes.filter(
          ({ start }, at) => (changes[at + 1]?.start ?? start + 2 * beatTicks) - start > beatTicks,
        );
        for (const { start, chord } of long) {
          const note = bass.find((each) => each.start === start + countIn * barTicks);
          if (chord !== null) expect(note && note.pitch % 12).toBe(chord.tones[0]?.pitchClass);
        }
      }),
    );
  });

  test('makeBacking counts in with a click a beat', () => {
    fc.assert(
      fc.property(backings, ({ chart, countIn, backing }) => {
        const drums =
          backing.parts?.find(({ percussion }) => percussion === true)?.line.notes ?? [];
        const { barTicks, beatsPerBar } = parseMetre(chart.metre);
        const from = (backing.chart?.pickup ?? 0) + countIn * barTicks;
        const clicks = drums.filter(({ pitch, start }) => pitch === DRUMS.click && start < from);
        expect(clicks.length).toBe(countIn * beatsPerBar);
      }),
    );
  });

  test('makeBacking is the same for the same seed, and muting a part leaves the others alone', () => {
    fc.assert(
      fc.property(fc.integer(), fc.constantFrom(...GROOVES.slice(0, 4)), (seed, groove) => {
        const chart = makeChart('quick-change', 'A', { choruses: 2 });
        const whole = makeBacking(chart, { seed, groove });
        expect(makeBacking(chart, { seed, groove })).toEqual(whole);
        const without = makeBacking(chart, { seed, groove, bass: { mute: true } });
        expect(without.parts).toEqual(whole.parts?.filter(({ name }) => name !== 'Bass'));
      }),
      { numRuns: 20 },
    );
  });
});
