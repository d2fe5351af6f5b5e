import { frequency } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DRUM_NAMES } from '../groove.js';
import type { BandEvent } from './band-events.js';
import { eventSound } from './event-sound.js';
import { peakOf, powerIn, strengthAt } from './loudness.fixture.js';
import { toneOfProgram } from './tone-sounds.js';

const TONES = ['bass', 'chords', 'organ', 'reed'] as const;
const SOUNDS = [...DRUM_NAMES, ...TONES];
const event = (sound: BandEvent['sound'], more: Partial<BandEvent> = {}): BandEvent => ({
  start: 0,
  duration: 0.5,
  part: 'Bass',
  sound,
  pitch: 43,
  gain: 1,
  ...more,
});

describe('eventSound', () => {
  test.each(SOUNDS)('eventSound gives %s within full loudness, from and to silence', (sound) => {
    const samples = eventSound(event(sound));
    expect(peakOf(samples)).toBeLessThanOrEqual(1);
    expect(peakOf(samples)).toBeGreaterThan(0.1);
    expect(Math.abs(samples.at(-1) as number)).toBeLessThan(0.01);
    expect(eventSound(event(sound))).toEqual(samples);
  });

  test.each(DRUM_NAMES)('eventSound lets %s die away', (sound) => {
    const sampleRate = 44_100;
    const samples = eventSound(event(sound));
    const seconds = samples.length / sampleRate;
    const [early, late] = [0, 0.75].map((from) =>
      powerIn({ samples, sampleRate }, from * seconds, (from + 0.25) * seconds),
    );
    expect(late).toBeLessThan((early as number) / 20);
  });

  test('eventSound puts every pitch of a band where equal temperament has it', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...TONES),
        fc.integer({ min: 28, max: 84 }),
        fc.constantFrom(22_050, 44_100, 48_000),
        (sound, pitch, sampleRate) => {
          const samples = eventSound(event(sound, { pitch, duration: 1 }), { sampleRate });
          const hertz = frequency(pitch);
          const own = strengthAt(samples, hertz, sampleRate);
          for (const off of [-0.5, 0.5]) {
            const beside = strengthAt(samples, frequency(pitch + off), sampleRate);
            expect(own).toBeGreaterThan(beside);
          }
          expect(own).toBeGreaterThan(strengthAt(samples, frequency(pitch + 6), sampleRate) * 4);
        },
      ),
      { numRuns: 12 },
    );
  });

  test('eventSound holds a tone for its length and lets it go, 20 seconds at the most', () => {
    const short = eventSound(event('organ', { duration: 0.5 }));
    expect(short.length / 44_100).toBeCloseTo(0.56, 2);
    const endless = eventSound(event('organ', { duration: 1e6 }), { sampleRate: 8000 });
    expect(endless.length / 8000).toBeCloseTo(20.06, 2);
  });

  test('eventSound leaves out the harmonics that a low rate cannot hold', () => {
    const samples = eventSound(event('reed', { pitch: 96 }), { sampleRate: 8000 });
    // The second harmonic of C7, at 4186 Hz, would fold back to 3814 Hz.
    const [own, folded] = [frequency(96), 8000 - 2 * frequency(96)].map((hertz) =>
      strengthAt(samples, hertz, 8000),
    );
    expect(folded).toBeLessThan((own as number) / 20);
  });

  test.each([
    [event('gong' as 'tom'), 'OPTION_UNKNOWN'],
    [event('bass', { duration: 0 }), 'NUMBER_RANGE'],
    [event('bass', { pitch: Number.NaN }), 'NUMBER_RANGE'],
    [null, 'OPTION_UNKNOWN'],
  ])('eventSound refuses %j', (given, code) => {
    expect(() => eventSound(given as BandEvent)).toThrow(expect.objectContaining({ code }));
  });

  test.each([0, 7999, 192_001, 44_100.5, '44100'])('eventSound refuses a rate of %j', (rate) => {
    expect(() => eventSound(event('kick'), { sampleRate: rate as number })).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE' }),
    );
  });
});

describe('toneOfProgram', () => {
  test.each([
    [34, 'bass'],
    [28, 'chords'],
    [1, 'chords'],
    [undefined, 'chords'],
    [17, 'organ'],
    [23, 'reed'],
  ] as const)('toneOfProgram plays program %s as %s', (program, tone) => {
    expect(toneOfProgram(program)).toBe(tone);
  });
});
