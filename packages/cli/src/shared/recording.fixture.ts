const RATE = 16_000;

/** A recording of G, B flat held 30 cents flat, C and D, a beat each at 120, after half a second. */
function recording(): Uint8Array {
  const samples = new Int16Array(RATE * 3);
  for (const [at, pitch] of [67, 69.7, 72, 74].entries()) {
    const from = (0.5 + at / 2) * RATE;
    for (let sample = 0; sample < 0.45 * RATE; sample += 1) {
      const phase = (2 * Math.PI * 440 * 2 ** ((pitch - 69) / 12) * sample) / RATE;
      samples[from + sample] = 6000 * (Math.sin(phase) + 0.5 * Math.sin(2 * phase));
    }
  }
  const head = Buffer.alloc(44);
  head.write('RIFF', 0);
  head.writeUInt32LE(36 + samples.byteLength, 4);
  head.write('WAVEfmt ', 8);
  head.writeUInt32LE(16, 16);
  head.writeUInt16LE(1, 20);
  head.writeUInt16LE(1, 22);
  head.writeUInt32LE(RATE, 24);
  head.writeUInt32LE(RATE * 2, 28);
  head.writeUInt16LE(2, 32);
  head.writeUInt16LE(16, 34);
  head.write('data', 36);
  head.writeUInt32LE(samples.byteLength, 40);
  return new Uint8Array(Buffer.concat([head, Buffer.from(samples.buffer)]));
}

/** As a WAV file. */
export const RECORDING = recording();
