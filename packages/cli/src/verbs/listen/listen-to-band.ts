import { readInFile } from '@reedplate/files';
import { formatOfName, readPiece } from '@reedplate/interchange';
import { makeLine } from '@reedplate/line';
import {
  type BandOfLines,
  bandOfLines,
  type HeardBand,
  hearBand,
  readWav,
} from '@reedplate/listen';
import { parseKey, ReedplateError } from '@reedplate/pitch';
import { type HarpPick, pickHarps } from '@reedplate/position';
import { isRecording } from '../../shared/is-recording.js';
import { writePieceFile } from '../../shared/piece-file.js';
import { type PrintWords, printAnswer } from '../../shared/print.js';
import { type RecordingWords, refuseRecordingWords } from '../../shared/recording-options.js';
import type { Terminal } from '../../terminal.js';
import { showBand } from './show-band.js';

/** What `reedplate listen --band --json` prints: what a band plays, and the harps to pick up, the best first. */
export type BandAnswer = (HeardBand | BandOfLines) & { readonly harps: readonly HarpPick[] };

interface BandWords extends PrintWords, RecordingWords {
  readonly key?: string;
  readonly harp?: string;
  readonly output?: string;
}

/** Harps that are named. */
const HARPS = 3;

/** Hears a band in a recording, or reads it from its notes, and says which harp goes with it. */
export function listenToBand(file: string, words: BandWords, terminal: Terminal): void {
  refuseRecordingWords(words, 'it without --band: a band is heard to say its tempo itself');
  if (words.harp !== undefined) {
    const expected = 'it without --band: which harp goes with a band is part of the answer';
    throw new ReedplateError({ code: 'USAGE', value: `--harp ${words.harp}`, expected });
  }
  const bytes = terminal.readBytes(file);
  const options = words.key === undefined ? {} : { key: parseKey(words.key) };
  const band = isRecording(bytes)
    ? readInFile(file, () => hearBand(readWav(bytes), options))
    : bandOfPiece(bytes, file, options);
  const { chart } = band;
  const answer: BandAnswer = { ...band, harps: pickHarps(chart.key, { chart }).slice(0, HARPS) };
  if (words.output !== undefined) write(answer, words.output, terminal);
  printAnswer(answer, words, terminal, showBand);
}

function bandOfPiece(
  bytes: Uint8Array,
  file: string,
  options: NonNullable<Parameters<typeof bandOfLines>[1]>,
): BandOfLines {
  return readInFile(file, () => {
    // All parts are read, so that no word is needed on which of them is the tune.
    const pitched = readPiece(bytes).parts.filter(({ percussion }) => percussion !== true);
    return bandOfLines(
      pitched.map(({ line }) => line),
      options,
    );
  });
}

/** The answer as JSON, the print as text, or the chart in a format of music, whose chords MIDI has as markers. */
function write(answer: BandAnswer, file: string, terminal: Terminal): void {
  const [, printed] = /\.(json|txt)$/iu.exec(file) ?? [];
  if (printed !== undefined) {
    const out = (text: string): void =>
      terminal.writeBytes(file, new TextEncoder().encode(`${text.trimEnd()}\n`));
    const json = printed.toLowerCase() === 'json';
    printAnswer(answer, { json }, { colour: false, width: TEXT_WIDTH, out }, showBand);
    return;
  }
  const { chart } = answer;
  const { metre, key, tempo } = chart;
  const line = makeLine([], { metre, ...(tempo === undefined ? {} : { tempo }) });
  const to = formatOfName(file, { to: 'write' });
  writePieceFile({ line, key, chart }, file, terminal, { to });
}

const TEXT_WIDTH = 80;
