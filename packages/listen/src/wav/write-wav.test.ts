import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import wavefile from 'wavefile';
import { readWav } from './read-wav.js';
import { writeWav } from './write-wav.js';

const sound = (samples: readonly number[], sampleRate = 44_100) => ({
  sampleRate,
  samples: Float32Array.from(samples),
});

describe('writeWav', () => {
  test('writeWav gives what readWav reads, to a 32,768th', () => {
    fc.assert(
      fc.property(
        fc.array(fc.float({ min: -1, max: 1, noNaN: true }), { maxLength: 300 }),
        fc.integer({ min: 8000, max: 192_000 }),
        (samples, rate) => {
          const back = readWav(writeWav(sound(samples, rate)));
          expect(back.sampleRate).toBe(rate);
          expect(back.samples).toHaveLength(samples.length);
          for (const [at, value] of samples.entries()) {
            expect(Math.abs((back.samples[at] as number) - value)).toBeLessThan(1.6 / 32_768);
          }
        },
      ),
    );
  });

  test('writeWav writes what another reader reads: one channel of 16 bits', () => {
    const wav = new wavefile.WaveFile(writeWav(sound([0, 0.5, -1, 1], 48_000)));
    expect(wav.fmt).toMatchObject({ numChannels: 1, sampleRate: 48_000, bitsPerSample: 16 });
    expect([...wav.getSamples(false, Int16Array)]).toEqual([0, 16_384, -32_767, 32_767]);
  });

  test('writeWav holds what is too loud at full loudness', () => {
    const { samples } = readWav(writeWav(sound([3, -3])));
    expect([...samples].map((value) => Math.round(value * 1000))).toEqual([1000, -1000]);
  });

  test.each([null, {}, { sampleRate: 44_100 }, { sampleRate: 1, samples: new Float32Array(1) }])(
    'writeWav refuses %j',
    (given) => {
      expect(() => writeWav(given as never)).toThrow(
        expect.objectContaining({ code: 'SOUND_INVALID' }),
      );
    },
  );
});
