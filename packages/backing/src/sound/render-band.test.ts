import { makeChart } from '@reedplate/form';
import { frequency } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { GROOVES } from '../grooves.js';
import { makeBacking } from '../make-backing.js';
import { bandEvents } from './band-events.js';
import { peakOf, powerIn, strengthAt } from './loudness.fixture.js';
import { renderBand } from './render-band.js';

const chart = makeChart('basic', 'G', { tempo: 240 });
const sampleRate = 16_000;

describe('renderBand', () => {
  test('renderBand sounds where the events are, and rings out to silence', () => {
    const backing = makeBacking(chart, { comping: { mute: true }, bass: { mute: true } });
    const sound = renderBand(backing, { sampleRate });
    for (const { start } of bandEvents(backing).slice(0, 4)) {
      expect(powerIn(sound, start, start + 0.01)).toBeGreaterThan(1e-4);
      expect(powerIn(sound, start + 0.1, start + 0.2)).toBeLessThan(1e-7);
    }
    expect(Math.abs(sound.samples.at(-1) as number)).toBeLessThan(1e-4);
  });

  test('renderBand is never beyond 0.8, however loud its parts', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...GROOVES.map(({ id }) => id)),
        fc.double({ min: 0.1, max: 2, noNaN: true }),
        (groove, level) => {
          const metre = groove === 'slow-twelve-eight' ? '12/8' : '4/4';
          const own = makeChart('basic', 'G', { tempo: 240, metre });
          const loud = { level };
          const backing = makeBacking(own, { groove, bass: loud, comping: loud, drums: loud });
          const peak = peakOf(renderBand(backing, { sampleRate: 8000, click: true }).samples);
          // Samples are kept to seven places.
          expect(peak).toBeLessThanOrEqual(0.8 + 1e-6);
          expect(peak).toBeGreaterThan(0.01);
        },
      ),
      { numRuns: 8 },
    );
  });

  test('renderBand sounds the root in the bass, bar by bar', () => {
    const backing = makeBacking(chart, { comping: { mute: true }, drums: { mute: true } });
    const { samples } = renderBand(backing, { sampleRate });
    const bar = (number: number) =>
      samples.subarray(number * sampleRate, Math.round((number + 0.25) * sampleRate));
    // After a bar of count-in: G in bar 1, C in bar 5, D in bar 9.
    const roots: readonly (readonly [number, number])[] = [[1, 31], [5, 36], [9, 38]]; // biome-ignore format: a row of bars
    for (const [number, root] of roots) {
      const heard = [29, 31, 34, 36, 38, 41].map((pitch) => ({
        pitch,
        strength: strengthAt(bar(number), frequency(pitch), sampleRate),
      }));
      const loudest = heard.reduce((most, one) => (one.strength > most.strength ? one : most));
      expect(loudest.pitch).toBe(root);
    }
  });

  test('renderBand is silent in a break', () => {
    const own = makeChart('basic', 'G', { tempo: 240, breaks: [{ chorus: 1, bars: [3, 4] }] });
    const backing = makeBacking(own, { countIn: 0 });
    const sound = renderBand(backing, { sampleRate });
    expect(powerIn(sound, 1, 2)).toBeGreaterThan(1e-4);
    expect(powerIn(sound, 3, 4)).toBeLessThan(1e-6);
  });

  test('renderBand gives the same samples each time, and others for another seed', () => {
    const band = (seed: number) => renderBand(makeBacking(chart, { seed }), { sampleRate: 8000 });
    expect(band(1)).toEqual(band(1));
    expect(band(2).samples).not.toEqual(band(1).samples);
  });

  test('renderBand refuses more than half an hour, and says what to do', () => {
    const long = makeBacking(makeChart('basic', 'G', { tempo: 40, choruses: 30 }));
    expect(() => renderBand(long)).toThrow(
      expect.objectContaining({
        code: 'NUMBER_RANGE',
        message: expect.stringContaining('fewer choruses'),
      }),
    );
  });
});
