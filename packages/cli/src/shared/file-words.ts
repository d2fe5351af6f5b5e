const FILE = /[./\\]|^-$/u;
const BAR_LINE = '|';

/**
 * Whether a word names a file rather than something of a catalogue: it holds a dot or a slash, or
 * is `-`, for standard input. Text with a bar line is bars of chords and never a file.
 */
export function isFileName(word: string): boolean {
  return !word.includes(BAR_LINE) && FILE.test(word);
}
