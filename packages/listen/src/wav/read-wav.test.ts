import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import wavefile from 'wavefile';
import { readWav } from './read-wav.js';

const WAVE = [0, 0.5, -0.5, 0.25, -1, 0.9];
const RATE = 44_100;

/** The wave as the library writes it, each channel the same. */
function wavOf(depth: string, channels = 1): Uint8Array {
  const full = depth.endsWith('f') || depth === '64' ? 1 : 2 ** (Number(depth) - 1);
  const zero = depth === '8' ? 128 : 0;
  const most = full === 1 ? 1 : full - 1;
  const values = WAVE.map((value) =>
    full === 1 ? value : Math.min(most, Math.round(value * full)) + zero,
  );
  const wav = new wavefile.WaveFile();
  wav.fromScratch(
    channels,
    RATE,
    depth,
    channels === 1 ? values : Array.from({ length: channels }, () => values),
  );
  return wav.toBuffer();
}

describe('readWav', () => {
  test.each(['8', '16', '24', '32', '32f', '64'])('readWav reads samples of %s bits', (depth) => {
    const { sampleRate, samples } = readWav(wavOf(depth));
    expect(sampleRate).toBe(RATE);
    expect(samples).toHaveLength(WAVE.length);
    for (const [at, value] of WAVE.entries())
      expect(samples[at]).toBeCloseTo(value, depth === '8' ? 1 : 3);
  });

  test('readWav mixes channels to one', () => {
    const { samples } = readWav(wavOf('16', 2));
    expect(samples).toHaveLength(WAVE.length);
    expect(samples[1]).toBeCloseTo(0.5, 3);
  });

  test('readWav takes what fetch gives', () => {
    const bytes = wavOf('16');
    const { buffer } = Uint8Array.from(bytes);
    expect(readWav(buffer)).toEqual(readWav(bytes));
  });

  test.each([[new Uint8Array()], [new Uint8Array([1, 2, 3])], ['take.wav'], [null]])(
    'readWav refuses %j, and says what to do',
    (bytes) => {
      expect(() => readWav(bytes as never)).toThrow(
        expect.objectContaining({
          code: 'SOUND_MALFORMED',
          message: expect.stringContaining('sound editor'),
        }),
      );
    },
  );

  /** A file of 16 bits with one head and its samples, bytes of the head changed. */
  function changed(at: number, ...bytes: readonly number[]): Uint8Array {
    const file = Uint8Array.from(wavOf('16'));
    file.set(bytes, at);
    return file;
  }

  test.each([
    ['packed samples', changed(20, 6, 0)],
    ['another number of bits', changed(34, 12, 0)],
    ['no channel', changed(22, 0, 0)],
    ['many channels', changed(22, 99, 0)],
    ['no head', changed(12, ...[...'junk'].map((letter) => letter.charCodeAt(0)))],
    ['a head that is too short', changed(16, 4, 0)],
    ['no sound', changed(36, 0)],
  ])('readWav refuses a file with %s', (_, file) => {
    expect(() => readWav(file)).toThrow(expect.objectContaining({ code: 'SOUND_MALFORMED' }));
  });

  test('readWav refuses a rate that no recorder has', () => {
    expect(() => readWav(changed(24, 1, 0, 0, 0))).toThrow(
      expect.objectContaining({ code: 'SOUND_INVALID', value: 1, where: { path: 'sampleRate' } }),
    );
  });

  test('readWav reads the code of the samples further down in an extended head', () => {
    const plain = wavOf('32f');
    const data = plain.subarray(plain.length - 4 * WAVE.length - 8);
    const head = new DataView(new ArrayBuffer(60));
    const words: readonly (readonly [number, string])[] = [
      [0, 'RIFF'],
      [8, 'WAVE'],
      [12, 'fmt '],
    ];
    for (const [at, word] of words) {
      for (const [offset, letter] of [...word].entries())
        head.setUint8(at + offset, letter.charCodeAt(0));
    }
    head.setUint32(16, 40, true);
    head.setUint16(20, 0xfffe, true);
    head.setUint16(22, 1, true);
    head.setUint32(24, RATE, true);
    head.setUint16(34, 32, true);
    head.setUint16(44, 3, true);
    const { samples } = readWav(Uint8Array.from([...new Uint8Array(head.buffer), ...data]));
    expect([...samples]).toEqual(WAVE.map((value) => Math.fround(value)));
  });

  test('readWav reads a file that was cut off as far as it goes', () => {
    const { samples } = readWav(wavOf('16').subarray(0, -5));
    expect(samples).toHaveLength(WAVE.length - 3);
  });

  test('readWav gives samples or a typed error for any bytes behind the head of a file', () => {
    const head = wavOf('16');
    fc.assert(
      fc.property(
        fc.uint8Array({ maxLength: 60 }),
        fc.nat({ max: head.length - 1 }),
        (bytes, at) => {
          const file = Uint8Array.from(head);
          file.set(bytes.subarray(0, file.length - at), at);
          try {
            expect(readWav(file).samples.length).toBeLessThan(file.length);
          } catch (error) {
            expect(error).toMatchObject({
              name: 'ReedplateError',
              code: expect.stringMatching(/^SOUND_/u),
            });
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});
