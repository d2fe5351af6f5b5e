import { harpName } from '@reedplate/layout';
import { lineFromSeconds, type NoteInSeconds } from '@reedplate/line';
import type { HeardNotes } from '@reedplate/listen';
import { type Key, noteNameWithOctave, parseKey } from '@reedplate/pitch';
import { bestPath } from '@reedplate/playability';
import type { Command } from 'commander';
import { count } from '../../shared/count.js';
import { examples } from '../../shared/examples.js';
import {
  type MaybeHarpWords,
  readMaybeHarp,
  withMaybeHarpOptions,
} from '../../shared/harp-options.js';
import { type LevelWords, readLevel, withLevel } from '../../shared/level-options.js';
import { withJsonOfHarps } from '../../shared/options.js';
import { writePieceFile } from '../../shared/piece-file.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { hearRecording, pieceOfHeard, type Recorded } from '../../shared/recording.js';
import {
  type RecordingWords,
  refuseRecordingWords,
  withRecordingOptions,
} from '../../shared/recording-options.js';
import { tabOf } from '../../shared/say-grips.js';
import type { Terminal } from '../../terminal.js';
import { type BandAnswer, listenToBand } from './listen-to-band.js';

/** What `reedplate listen --json` prints: the notes of a player, or with `--band` what a band plays. */
export type ListenAnswer = HeardNotes | BandAnswer;

interface ListenWords extends LevelWords, MaybeHarpWords, PrintWords, RecordingWords {
  readonly key?: string;
  readonly output?: string;
  readonly band: boolean;
}

/** Gives `reedplate listen` its options and what it does. */
export function setUpListen(verb: Command, terminal: Terminal): void {
  const asked = withRecordingOptions(withLevel(withMaybeHarpOptions(verb, HARP), LEVEL));
  withJsonOfHarps(asked)
    .argument('<recording>', 'a WAV file of one harp alone; - for standard input')
    .option(
      '--band',
      'hear a band instead: its key, tempo, bars, chords and form; its notes in MIDI or MusicXML will do',
      false,
    )
    .option(
      '--key <key>',
      'key of the song: spells the notes, else that of the harp, or C; with --band, the key where it is known',
    )
    .option(
      '-o, --output <file>',
      'file to write: .json, .mid, .musicxml, .abc or .tab; needs --tempo; with --band .json, .mid, .musicxml or .txt',
    )
    .addHelpText(
      'after',
      examples(
        'reedplate listen take.wav --harp C --key G',
        'reedplate listen take.wav --harp C --tempo 96 -o take.mid',
        'reedplate listen track.wav --band',
      ),
    )
    .action((file: string, words: ListenWords) =>
      words.band ? listenToBand(file, words, terminal) : listen(file, words, terminal),
    );
}

const HARP = 'harp that plays: only what it sounds is heard, and written as tab';
const LEVEL = 'what is listened for, where the harp is known';

function listen(file: string, words: ListenWords, terminal: Terminal): void {
  const harp = readMaybeHarp(words, terminal);
  const recorded: Recorded = { ...harp, level: readLevel(words, terminal) };
  const heard = hearRecording(terminal.readBytes(file), file, recorded);
  const key = parseKey(words.key ?? harp.harp?.firstPosition ?? 'C');
  if (words.output === undefined) refuseRecordingWords(words, 'it with -o, for what is written');
  else {
    const piece = pieceOfHeard(heard, file, words);
    writePieceFile({ ...piece, key: key.name }, words.output, terminal, recorded);
  }
  printAnswer(heard, words, terminal, (found, page) => showHeard(found, key, recorded, page));
}

function showHeard(
  { notes, reference, seconds }: HeardNotes,
  key: Key,
  recorded: Recorded,
  { paint, table }: Page,
): readonly string[] {
  const on = recorded.harp === undefined ? '' : ` on a ${harpName(recorded.harp)} harp`;
  const title = `${count(notes.length, 'note')} in ${seconds.toFixed(1)} s${on}, A4 at ${reference.toFixed(1)} Hz`;
  if (notes.length === 0) return [paint('heading', title), 'nothing with a pitch was heard'];
  const tabs = tabsOf(notes, recorded);
  const rows = notes.map((note, at) => [
    note.start.toFixed(2),
    noteNameWithOctave(note.pitch, { key }),
    ...(recorded.harp === undefined ? [] : [tabs[at] ?? '']),
    note.duration.toFixed(2),
    sayCents(note.cents ?? 0),
    sayMove(note),
  ]);
  const tab = recorded.harp === undefined ? [] : ['tab'];
  const head = ['second', 'note', ...tab, 'for', 'cents', 'moves by'];
  return [paint('heading', title), '', ...table({ head, rows })];
}

/** The easiest way to play what was heard; none where the harp has not all of it. */
function tabsOf(notes: readonly NoteInSeconds[], { harp, level }: Recorded): readonly string[] {
  if (harp === undefined) return [];
  const line = lineFromSeconds(notes, { tempo: BEAT_A_SECOND });
  const found = bestPath(line, harp, level === undefined ? {} : { level });
  return found.playable ? found.soundings.map((grip) => tabOf([grip])) : [];
}

/** A beat a second: only the order of the notes matters. */
const BEAT_A_SECOND = 60;

/** Cents off the pitch; what no ear can tell is none. */
function sayCents(cents: number): string {
  const whole = Math.round(cents);
  if (whole === 0) return '0';
  return whole > 0 ? `+${whole}` : `${whole}`;
}

function sayMove({ curve }: NoteInSeconds): string {
  if (curve === undefined) return '';
  const cents = curve.map((point) => point.cents);
  return `${Math.round(Math.min(...cents))} to ${Math.round(Math.max(...cents))}`;
}
