/** The loudest of some samples. */
export function peakOf(samples: Float32Array): number {
  return samples.reduce((peak, sample) => Math.max(peak, Math.abs(sample)), 0);
}

/** Power of samples, from one second to another. */
export function powerIn(
  { samples, sampleRate }: { readonly samples: Float32Array; readonly sampleRate: number },
  from: number,
  to: number,
): number {
  const part = samples.subarray(Math.round(from * sampleRate), Math.round(to * sampleRate));
  return part.reduce((sum, sample) => sum + sample * sample, 0) / Math.max(1, part.length);
}

/** How strongly a frequency sounds in samples, by Goertzel's sum. */
export function strengthAt(samples: Float32Array, hertz: number, sampleRate: number): number {
  const turn = (2 * Math.PI * hertz) / sampleRate;
  let [real, imaginary] = [0, 0];
  for (const [at, sample] of samples.entries()) {
    real += sample * Math.cos(turn * at);
    imaginary += sample * Math.sin(turn * at);
  }
  return Math.hypot(real, imaginary) / samples.length;
}
