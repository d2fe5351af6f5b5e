/** MIDI number of a frequency with its fraction, A4 at 440 hertz being 69. */
export const pitchOfHertz = (hertz: number): number => 69 + 12 * Math.log2(hertz / 440);
