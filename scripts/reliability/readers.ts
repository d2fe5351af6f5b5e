import { parseForm, readChart, readForm, recogniseForm } from '@reedplate/form';
import { detectFormat, readAbc, readMidi, readMusicXml, readPiece } from '@reedplate/interchange';
import {
  makeHarp,
  parseHarp,
  parseReedEdit,
  readHarp,
  readPlayer,
  readScala,
  readTuning,
} from '@reedplate/layout';
import { parseMetre, readLine } from '@reedplate/line';
import { readWav } from '@reedplate/listen';
import { parseChord, parseKey, parseNoteName, parseNumeral, parseScale } from '@reedplate/pitch';
import { parsePhrase, readPhrase, readPhrases } from '@reedplate/practice';
import { detectTab, parseTab, parseTimedTab } from '@reedplate/tab';
import { zipSync } from 'fflate';
import { ABC_PATTERNS } from './abc-patterns.js';
import { JSON_PATTERNS, LINE_PATTERNS } from './json-patterns.js';
import { MIDI_PATTERNS } from './midi-patterns.js';
import { FORM_PATTERNS, NAME_PATTERNS, SCALA_PATTERNS, TAB_PATTERNS } from './other-patterns.js';
import type { Pattern } from './pattern.js';
import { WAV_PATTERNS } from './wav-patterns.js';
import { XML_PATTERNS } from './xml-patterns.js';

/** A reader or parser that is tried with input of strangers. */
export interface Reader {
  readonly name: string;
  /** A search is a parser, which the table has too, and then a comparison with every form that there is. */
  readonly kind: 'text' | 'file' | 'search';
  readonly read: (input: string | Uint8Array) => unknown;
  readonly patterns: readonly Pattern[];
}

const harp = makeHarp('C');
const bytes = (input: string | Uint8Array): Uint8Array =>
  typeof input === 'string' ? new TextEncoder().encode(input) : input;
const words = (input: string | Uint8Array): string =>
  typeof input === 'string' ? input : new TextDecoder().decode(input);

function text(
  name: string,
  read: (input: string) => unknown,
  patterns: readonly Pattern[] = NAME_PATTERNS,
): Reader {
  return { name, kind: 'text', read: (input) => read(words(input)), patterns };
}

const packed: readonly Pattern[] = XML_PATTERNS.slice(0, 3).map(({ name, ofSize }) => ({
  name: `${name}, compressed`,
  // Stored, so that the size asked for is the size of the file.
  ofSize: (size) => zipSync({ 'score.xml': bytes(ofSize(size)) }, { level: 0 }),
}));

/** Every reader and parser of the library. */
export const READERS: readonly Reader[] = [
  {
    name: 'readMidi',
    kind: 'file',
    read: (input) => readMidi(bytes(input)),
    patterns: MIDI_PATTERNS,
  },
  {
    name: 'readMusicXml',
    kind: 'file',
    read: (input) => readMusicXml(input),
    patterns: [...XML_PATTERNS, ...packed],
  },
  { name: 'readWav', kind: 'file', read: (input) => readWav(bytes(input)), patterns: WAV_PATTERNS },
  { name: 'readAbc', kind: 'file', read: (input) => readAbc(input), patterns: ABC_PATTERNS },
  {
    name: 'readPiece',
    kind: 'file',
    read: (input) => readPiece(input, { harp }),
    patterns: [...TAB_PATTERNS, ...LINE_PATTERNS],
  },
  {
    name: 'detectFormat',
    kind: 'file',
    read: (input) => detectFormat(input),
    patterns: [...TAB_PATTERNS, ...ABC_PATTERNS, ...packed],
  },
  text('parseTab', (input) => parseTab(input), TAB_PATTERNS),
  text('parseTimedTab', (input) => parseTimedTab(input), TAB_PATTERNS),
  text('detectTab', (input) => detectTab(input), TAB_PATTERNS),
  text('parsePhrase', (input) => parsePhrase(input), TAB_PATTERNS),
  text('parseForm', (input) => parseForm(input), FORM_PATTERNS),
  { ...text('recogniseForm', (input) => recogniseForm(input), FORM_PATTERNS), kind: 'search' },
  text('readScala', (input) => readScala(input), SCALA_PATTERNS),
  text('readLine', (input) => readLine(input), LINE_PATTERNS),
  text('readForm', (input) => readForm(input), JSON_PATTERNS),
  text('readTuning', (input) => readTuning(input), JSON_PATTERNS),
  text('readChart', (input) => readChart(input), JSON_PATTERNS),
  text('readHarp', (input) => readHarp(input), JSON_PATTERNS),
  text('readPlayer', (input) => readPlayer(input), JSON_PATTERNS),
  text('readPhrase', (input) => readPhrase(input), JSON_PATTERNS),
  text('readPhrases', (input) => readPhrases(input), [...JSON_PATTERNS, ...TAB_PATTERNS]),
  text('parseChord', parseChord),
  text('parseNumeral', (input) => parseNumeral(input)),
  text('parseScale', (input) => parseScale(input)),
  text('parseKey', parseKey),
  text('parseNoteName', parseNoteName),
  text('parseMetre', (input) => parseMetre(input as '4/4')),
  text('parseHarp', (input) => parseHarp(input)),
  text('parseReedEdit', parseReedEdit),
];
