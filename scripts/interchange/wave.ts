/** Sound of one channel. */
export interface Wave {
  /** Samples a second. */
  readonly rate: number;
  /** −1 to 1. */
  readonly samples: Float32Array;
}

/** Reads the first channel of a WAVE file of 16-bit samples, as fluidsynth writes it. */
export function readWave(bytes: Uint8Array): Wave {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const channels = view.getUint16(22, true);
  const data = chunkAt(view, 'data');
  const frames = Math.floor(data.length / 2 / channels);
  const samples = Float32Array.from(
    { length: frames },
    (_, at) => view.getInt16(data.start + at * channels * 2, true) / 32768,
  );
  return { rate: view.getUint32(24, true), samples };
}

function chunkAt(
  view: DataView,
  name: string,
): { readonly start: number; readonly length: number } {
  let at = 12;
  while (at + 8 <= view.byteLength) {
    const id = String.fromCharCode(...[0, 1, 2, 3].map((byte) => view.getUint8(at + byte)));
    const length = view.getUint32(at + 4, true);
    if (id === name) return { start: at + 8, length: Math.min(length, view.byteLength - at - 8) };
    at += 8 + length;
  }
  throw new Error(`the WAVE file has no ${name}`);
}
