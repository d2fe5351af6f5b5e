import FFT from 'fft.js';

/** Reads the strengths of the frequencies of a stretch of sound. */
export interface SpectrumReader {
  /** Hertz from one strength to the next. */
  readonly step: number;
  /** Strengths around a sample, from 0 hertz on; the same array each time. */
  readonly read: (samples: Float32Array, centre: number) => Float64Array;
}

/** Reads stretches of so many seconds, up to so many hertz, through a Hann window. */
export function spectrumReader(
  sampleRate: number,
  { seconds, highest }: { readonly seconds: number; readonly highest: number },
): SpectrumReader {
  const size = Math.round(seconds * sampleRate);
  let length = 1;
  while (length < size) length *= 2;
  const fourier = new FFT(length);
  const window = Float64Array.from(
    { length: size },
    (_, at) => (0.5 - 0.5 * Math.cos((2 * Math.PI * (at + 0.5)) / size)) / size,
  );
  const input = new Array<number>(length).fill(0);
  const output = fourier.createComplexArray() as number[];
  const step = sampleRate / length;
  const strengths = new Float64Array(Math.min(length / 2, Math.floor(highest / step) + 2));
  const read = (samples: Float32Array, centre: number): Float64Array => {
    const from = centre - (size >> 1);
    for (let at = 0; at < size; at += 1)
      input[at] = (samples[from + at] ?? 0) * (window[at] as number);
    fourier.realTransform(output, input);
    for (let bin = 0; bin < strengths.length; bin += 1) {
      const [real, imaginary] = [output[2 * bin] as number, output[2 * bin + 1] as number];
      strengths[bin] = Math.sqrt(real * real + imaginary * imaginary);
    }
    return strengths;
  };
  return { step, read };
}
