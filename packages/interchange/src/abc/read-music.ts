import { HIGHEST_MIDI, powerOfTwo } from '@reedplate/pitch';
import { type MusicContext, readGrace, readOrnament } from './read-decoration.js';
import { readLength, readNotes } from './read-note.js';
import { type MusicToken, type TokenKind, tokenise } from './tokens.js';
import {
  addVoiceEvent,
  closeMeasure,
  type EventNote,
  enterLayer,
  type Voice,
  type VoiceEvent,
} from './voice.js';

type Handler = (token: MusicToken, context: MusicContext) => void;

/** Reads one sign of music into its voice. Fields in brackets are read by the tune's reader. */
export function readSign(token: MusicToken, context: MusicContext): void {
  HANDLERS[token.kind](token, context);
}

const ignore: Handler = () => undefined;

const HANDLERS: Readonly<Record<TokenKind, Handler>> = {
  space: ignore,
  slur: ignore,
  field: ignore,
  grace: readGrace,
  ornament: readOrnament,
  unknown: ({ text, column }, { line, warnings }) =>
    warnings.add('symbol-unknown', { line, column }, text),
  quoted: readQuoted,
  bar: readBar,
  ending: readEnding,
  chord: readChord,
  note: readNote,
  rest: readRest,
  'bar-rest': readBarRest,
  tuplet: readTuplet,
  broken: readBroken,
  tie: readTie,
  overlay: (_, { voice }) => {
    addVoiceEvent(voice, { kind: 'overlay' });
    enterLayer(voice, voice.layer + 1);
  },
};

/** Text in quotes is a chord symbol, unless its first sign says that it is an annotation. */
function readQuoted({ text }: MusicToken, { voice }: MusicContext): void {
  const inside = text.slice(1, -1);
  const isRemark = /^(?:[\^_<>@]|\s*$)/u.test(inside);
  if (!isRemark) addVoiceEvent(voice, { kind: 'symbol', text: inside });
}

const MOST_COLONS = 8;

function readBar({ text, column }: MusicToken, { voice, line }: MusicContext): void {
  const isAllColons = /^:+$/u.test(text);
  const colons = Math.min(/^:*/u.exec(text)?.[0].length ?? 0, MOST_COLONS);
  const opens = text.endsWith(':');
  const closes = isAllColons ? 2 : colons === 0 ? 0 : colons + 1;
  const isDouble = /\|\||\[|\]/u.test(text);
  const endsSection = opens || closes > 0 || /\|\||\]/u.test(text);
  closeMeasure(voice, { opens, closes, isDouble, endsSection }, { line, column });
}

const MOST_ENDINGS = 16;

function readEnding({ text, column }: MusicToken, { voice, line }: MusicContext): void {
  // An ending may begin without a bar line of its own.
  closeMeasure(voice, { opens: false, closes: 0, endsSection: true }, { line, column });
  const numbers = new Set<number>();
  for (const part of text.replace('[', '').split(/[,.]/u)) {
    const [from = 0, to = from] = part.split('-').map(Number);
    for (let number = from; number <= Math.min(to, MOST_ENDINGS); number += 1) numbers.add(number);
  }
  voice.endings = [...numbers].filter((number) => number > 0);
}

function readNote({ text, column }: MusicToken, context: MusicContext): void {
  const [note] = readNotes(text, context.voice);
  if (note !== undefined) addEvent([note], note.length, column, context);
}

const CHORD = /^\[([^\]]*)\](\d{0,6})(\/{0,6})(\d{0,6})$/u;
const LENGTH = /^(\d{0,6})(\/{0,6})(\d{0,6})$/u;

function readChord({ text, column }: MusicToken, context: MusicContext): void {
  const [, inside = '', upper = '', slashes = '', lower = ''] = CHORD.exec(text) ?? [];
  const signs = tokenise(inside).map((sign) => ({ ...sign, column: column + sign.column }));
  for (const sign of signs) readSignInChord(sign, context);
  const factor = readLength(upper, slashes, lower);
  const plain = signs
    .flatMap(({ kind, text: sign }) => (IS_OF_NOTES.has(kind) ? [sign] : []))
    .join('');
  const notes = readNotes(plain, context.voice).map((note) => ({
    ...note,
    length: note.length * factor,
  }));
  const [first] = notes;
  if (first !== undefined) addEvent(notes, first.length, column, context);
  else context.warnings.add('symbol-unknown', { line: context.line, column }, text);
}

const IS_OF_NOTES: ReadonlySet<TokenKind> = new Set(['note', 'tie']);
const SAID_OF_CHORD: ReadonlySet<TokenKind> = new Set(['space', 'slur', 'quoted', 'ornament']);

/** What stands among the notes of a chord is said of all of them; other signs have no meaning there. */
function readSignInChord(sign: MusicToken, context: MusicContext): void {
  if (IS_OF_NOTES.has(sign.kind)) return;
  if (SAID_OF_CHORD.has(sign.kind)) readSign(sign, context);
  else HANDLERS.unknown(sign, context);
}

function readRest({ text, column }: MusicToken, context: MusicContext): void {
  const [, upper = '', slashes = '', lower = ''] = LENGTH.exec(text.slice(1)) ?? [];
  const length = context.voice.unitTicks * readLength(upper, slashes, lower);
  addEvent([], length, column, context);
}

const WHOLE_TICKS = 3840;

function readBarRest({ text, column }: MusicToken, { voice, line }: MusicContext): void {
  const length = (voice.metre.size ?? 1) * WHOLE_TICKS;
  const bars = Math.max(1, Number(text.slice(1) || 1));
  for (let bar = 1; bar <= bars; bar += 1) {
    addVoiceEvent(voice, { kind: 'notes', notes: [], length, accent: false });
    if (bar < bars) {
      closeMeasure(voice, { opens: false, closes: 0, endsSection: false }, { line, column });
    }
  }
}

/** Adds notes that begin together, or a rest; length as tuplet and broken rhythm make it. */
function addEvent(
  notes: readonly EventNote[],
  length: number,
  column: number,
  { voice, line, warnings }: MusicContext,
): void {
  const factor = takeTuplet(voice) * voice.brokenFactor;
  voice.brokenFactor = 1;
  if (!(length * factor > 0) || !Number.isFinite(length)) {
    warnings.add('note-empty', { line, column });
    return;
  }
  const inRange = notes.filter(({ pitch }) => pitch >= 0 && pitch <= HIGHEST_MIDI);
  if (inRange.length < notes.length) warnings.add('pitch-range', { line, column });
  voice.tiedPitches = tiedOf(inRange);
  addVoiceEvent(voice, {
    kind: 'notes',
    notes: inRange.map((note) => ({ ...note, length: note.length * factor })),
    length: length * factor,
    accent: voice.accent,
  });
  voice.accent = false;
}

function tiedOf(notes: readonly EventNote[]): Map<string, number> {
  const tied = notes.filter((note) => note.tied);
  return new Map(tied.map(({ letter, octave, pitch }) => [`${letter}${octave}`, pitch]));
}

function takeTuplet({ tuplet }: Voice): number {
  if (tuplet.left === 0) return 1;
  tuplet.left -= 1;
  return tuplet.factor;
}

/** Notes that a tuplet squeezes into the time of how many, where the metre does not settle it. */
const IN_TIME_OF: ReadonlyMap<number, number> = new Map([
  [2, 3],
  [3, 2],
  [4, 3],
  [6, 2],
  [8, 3],
]);

function readTuplet({ text }: MusicToken, { voice }: MusicContext): void {
  const [notes = 0, time = 0, reach = 0] = text.slice(1).split(':').map(Number);
  if (notes === 0) return;
  const isCompound = /^(?:6|9|12|15)\/(?:8|16)$/u.test(voice.metre.metre ?? '');
  const inTimeOf = time || (IN_TIME_OF.get(notes) ?? (isCompound ? 3 : 2));
  voice.tuplet = { left: reach || notes, factor: inTimeOf / notes };
}

/** `a>b` dots the first and halves the second; `>>` double-dots, and `<` turns it round. */
function readBroken({ text }: MusicToken, { voice }: MusicContext): void {
  const short = 1 / powerOfTwo(text.length);
  const isLongFirst = text.startsWith('>');
  const at = voice.lastNotes;
  const event = voice.events[at];
  if (event?.kind !== 'notes') return;
  voice.events[at] = lengthen(event, isLongFirst ? 2 - short : short);
  voice.brokenFactor = isLongFirst ? short : 2 - short;
}

function lengthen(
  event: Extract<VoiceEvent, { readonly kind: 'notes' }>,
  factor: number,
): VoiceEvent {
  const notes = event.notes.map((note) => ({ ...note, length: note.length * factor }));
  return { ...event, notes, length: event.length * factor };
}

function readTie({ text, column }: MusicToken, { voice, line, warnings }: MusicContext): void {
  const at = voice.lastNotes;
  const event = voice.events[at];
  if (event?.kind !== 'notes' || event.notes.length === 0) {
    warnings.add('symbol-unknown', { line, column }, text);
    return;
  }
  const notes = event.notes.map((note) => ({ ...note, tied: true }));
  voice.events[at] = { ...event, notes };
  voice.tiedPitches = tiedOf(notes);
}
