export const abc = 'X:1\nT:Test\nM:4/4\nL:1/4\nK:G\nG B d g|\n';
export const bar = [{ numeral: 'I7', weight: 1 }] as const;
export const marks = [{ hole: 2, breath: 'draw', bend: 0, over: false }] as const;

/** A tenth of a second of silence. */
export const SOUND = { sampleRate: 8000, samples: new Float32Array(800) };

/** Four seconds of one tone. */
export const BAND = {
  sampleRate: 8000,
  samples: Float32Array.from({ length: 32_000 }, (_, at) => Math.sin(at / 6)),
};

/** The head of a WAV file of 16 bits, without a sample. */
const HEAD =
  'RIFF\0\0\0\0WAVEfmt \x10\0\0\0\x01\0\x01\0\x40\x1f\0\0\x80\x3e\0\0\x02\0\x10\0data\0\0\0\0';
export const WAV = Uint8Array.from(HEAD, (letter) => letter.charCodeAt(0));
