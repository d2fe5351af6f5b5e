/** How a file keeps a sample. */
export interface SampleFormat {
  readonly bytes: number;
  /** A sample from -1 to 1. */
  readonly read: (data: DataView, at: number) => number;
}

/** Codes of whole numbers, of numbers with a point, and of either with the code further down. */
const WHOLE = 1;
const FLOAT = 3;
const EXTENDED = 0xfffe;
/** Where an extended head has the code. */
const EXTENDED_CODE = 24;

/** By bits and kind of number. The least bits are kept without a sign. */
const FORMATS: ReadonlyMap<string, SampleFormat> = new Map([
  ['8 whole', { bytes: 1, read: (data, at) => (data.getUint8(at) - 128) / 128 }],
  ['16 whole', { bytes: 2, read: (data, at) => data.getInt16(at, true) / 2 ** 15 }],
  [
    '24 whole',
    {
      bytes: 3,
      read: (data, at) => (data.getInt16(at + 1, true) * 256 + data.getUint8(at)) / 2 ** 23,
    },
  ],
  ['32 whole', { bytes: 4, read: (data, at) => data.getInt32(at, true) / 2 ** 31 }],
  ['32 float', { bytes: 4, read: (data, at) => data.getFloat32(at, true) }],
  ['64 float', { bytes: 8, read: (data, at) => data.getFloat64(at, true) }],
]);

/** How samples are kept, by the head of the file, 16 bytes at least; undefined for packed ones and the like. */
export function sampleFormatOf(format: DataView): SampleFormat | undefined {
  const first = format.getUint16(0, true);
  const isExtended = first === EXTENDED && format.byteLength >= EXTENDED_CODE + 2;
  const code = isExtended ? format.getUint16(EXTENDED_CODE, true) : first;
  const kind = code === WHOLE ? 'whole' : code === FLOAT ? 'float' : 'other';
  return FORMATS.get(`${format.getUint16(14, true)} ${kind}`);
}

/** The samples of all channels, mixed to one; a last one that is not whole is left out. */
export function mixedSamples(
  data: DataView,
  { bytes, read }: SampleFormat,
  channels: number,
): Float32Array {
  const samples = new Float32Array(Math.floor(data.byteLength / bytes / channels));
  for (let at = 0; at < samples.length; at += 1) {
    let sum = 0;
    for (let channel = 0; channel < channels; channel += 1) {
      sum += read(data, (at * channels + channel) * bytes);
    }
    samples[at] = sum / channels;
  }
  return samples;
}
