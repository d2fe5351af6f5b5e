import { type OptionNames, ReedplateError, requireOneOf, requireOptions } from '@reedplate/pitch';
import { decodeText } from '../decode-text.js';
import type { FileInput } from '../file-bytes.js';
import {
  assemblePiece,
  READ_NOTATION_OPTIONS,
  type ReadNotationOptions,
  type WrittenNotation,
} from '../notation/assemble-piece.js';
import type { Piece } from '../piece.js';
import { makeWarningList } from '../warning.js';
import { quartersOf } from './fields.js';
import { readTune, type WrittenTune } from './read-tune.js';
import { splitTuneBook } from './tune-book.js';
import { ACCIDENTAL_REACHES, type AccidentalReach } from './voice.js';

/** How ABC is read. */
export interface ReadAbcOptions extends ReadNotationOptions {
  /**
   * How far an accidental holds until the bar line, where the tune does not say: for its letter in
   * all octaves (`pitch`, the default, as the standard has it), in its own `octave`, or `not` at all.
   */
  readonly accidentals?: AccidentalReach;
}

const READ_ABC_OPTIONS: OptionNames<ReadAbcOptions> = {
  ...READ_NOTATION_OPTIONS,
  accidentals: true,
};

/**
 * Reads every tune of a file in ABC notation 2.1: notes, chord symbols, repeats with endings,
 * tuplets, broken rhythm, ties, overlays, several voices, grace notes, accents and tempo changes.
 * Ornaments are left out, as each piece's warnings say.
 *
 * @param input text, or the bytes of a file
 * @returns one piece a tune, in the order of the file
 * @throws ReedplateError `ABC_SYNTAX` where the text holds no tune, `FORMAT_UNKNOWN` for bytes that are no
 * text, `FILE_TOO_LARGE` above 16 MB; `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { readAbc } from '@reedplate/interchange';
 *
 * const [piece] = readAbc('X:1\nT:Riff\nM:4/4\nL:1/4\nK:G\n"G7"G2 _B=B|"C7"c4|]');
 * piece?.line.notes.map((note) => note.pitch); // => [67, 70, 71, 72]
 * piece?.chart?.spans.map((span) => span.numeral); // => ['I7', 'IV7']
 * readAbc('no tune'); // throws ABC_SYNTAX
 * ```
 */
export function readAbc(input: FileInput, options: ReadAbcOptions = {}): readonly Piece[] {
  const { accidentals = 'pitch' } = requireOptions(options, READ_ABC_OPTIONS, 'readAbc');
  const reach = requireOneOf(accidentals, ACCIDENTAL_REACHES, {
    what: 'a reach of accidentals',
  });
  const text = decodeText(input);
  const { header, tunes } = splitTuneBook(text);
  if (tunes.length === 0) {
    throw new ReedplateError({
      code: 'ABC_SYNTAX',
      value: text,
      expected: 'a tune that begins with a field X: and has a key in a field K:',
      where: { line: 1 },
    });
  }
  return Object.freeze(
    tunes.map((lines) => {
      const warnings = makeWarningList();
      return assemblePiece(
        toNotation(readTune([...header, ...lines], reach, warnings)),
        warnings,
        options,
      );
    }),
  );
}

function toNotation({ tempo, voices, ...head }: WrittenTune): WrittenNotation {
  return {
    ...head,
    ...(tempo === undefined ? {} : { quartersPerMinute: quartersOf(tempo) }),
    parts: voices,
  };
}
