import { commonDivisor } from '@reedplate/line';
import type { KeyName } from '@reedplate/pitch';
import { cutAt, type SpelledNote, spellVoice } from '../notation/spell-voice.js';
import type { BarChord, BarEvent, BarTempo, WrittenBar } from '../notation/write-bars.js';
import type { Signature } from './key-field.js';
import { type BarAccidentals, markDoubled, writePitch } from './write-pitch.js';

/** What bars are written with. */
export interface WriteContext {
  readonly key: KeyName;
  readonly signature: Signature;
  /** Ticks of a felt beat: notes within one are written together. */
  readonly beatTicks: number;
}

interface BarContext extends WriteContext {
  readonly length: number;
}

/** The music of a bar, without its bar lines: voices that overlap stand behind `&`. */
export function writeBar(
  { voices, chords, tempos, length }: WrittenBar,
  head: WriteContext,
): string {
  const accidentals: BarAccidentals = new Map();
  const context: BarContext = { ...head, length };
  return voices
    .map((events, at) =>
      writeVoice(events, at === 0 ? { chords, tempos } : NO_MARKS, accidentals, context),
    )
    .join(' & ');
}

/** What stands over the notes of the first voice. */
type Marks = Pick<WrittenBar, 'chords' | 'tempos'>;
const NO_MARKS: Marks = { chords: [], tempos: [] };

function writeVoice(
  events: readonly BarEvent[],
  { chords, tempos }: Marks,
  accidentals: BarAccidentals,
  context: BarContext,
): string {
  // A chord symbol or tempo stands before a note: one that comes within a note cuts it, tied.
  const places = [...chords, ...tempos].map(({ offset }) => offset);
  const pieces = events.flatMap((event) => cutAt(event, places));
  const { beatTicks, length } = context;
  return spellVoice(pieces, { beatTicks, length })
    .map((note, at) => {
      // The beats of a pickup are counted from its end.
      const isNewBeat = at > 0 && (length - note.offset) % beatTicks === 0;
      const text = writeNote(note, chords, accidentals, context);
      const tempo = tempoAt(tempos, note.offset, beatTicks);
      return `${isNewBeat ? ' ' : ''}${tempo}${tupletMark(note)}${text}`;
    })
    .join('');
}

function writeNote(
  { chord, offset, duration, pitches, value, word, tiedTo, graces = [], played = [] }: SpelledNote,
  chords: readonly BarChord[],
  accidentals: BarAccidentals,
  { key, signature }: BarContext,
): string {
  const spelling = { key, signature, chord };
  const lead = graces.map((together) =>
    chordOf(together.map(({ pitch }) => writePitch(pitch, spelling, accidentals))),
  );
  const before = lead.length === 0 ? '' : `{${lead.join('')}}`;
  markDoubled(pitches, spelling, accidentals);
  const names = pitches.map((pitch) => writePitch(pitch, spelling, accidentals));
  const notes = names.length === 0 ? 'z' : chordOf(names);
  const accent = played.some((each) => each.accent === true) ? '!accent!' : '';
  const annotation = word === undefined ? '' : `"_${quotable(word)}"`;
  const length = writeLength(value?.triplet === true ? (duration * 3) / 2 : duration);
  const tie = tiedTo ? '-' : '';
  return `${before}${chordAt(chords, offset)}${annotation}${accent}${notes}${length}${tie}`;
}

function chordOf(names: readonly string[]): string {
  return names.length > 1 ? `[${names.join('')}]` : (names[0] ?? '');
}

/** A tempo as `Q:` gives it, in felt beats. */
export function tempoText(tempo: number, beatTicks: number): string {
  const beat = beatTicks % 1440 === 0 ? `${beatTicks / 480}/8` : `1/${3840 / beatTicks}`;
  return `${beat}=${tempo}`;
}

function tempoAt(tempos: readonly BarTempo[], at: number, beatTicks: number): string {
  const found = tempos.find(({ offset }) => offset === at);
  return found === undefined ? '' : `[Q:${tempoText(found.tempo, beatTicks)}]`;
}

function chordAt(chords: readonly BarChord[], at: number): string {
  const found = chords.find(({ offset }) => offset === at);
  return found === undefined ? '' : `"${found.chord?.symbol ?? 'N.C.'}"`;
}

function quotable(word: string): string {
  return word.replaceAll('"', '″').replaceAll(/\s+/gu, ' ');
}

/** The mark before the first note of a tuplet; empty elsewhere. */
function tupletMark({ tuplet }: SpelledNote): string {
  if (tuplet?.at !== 0) return '';
  return tuplet.size === 3 ? '(3' : `(3:2:${tuplet.size}`;
}

/** Ticks of the unit note length, an eighth. */
const UNIT = 480;

/** A length as a multiple or fraction of an eighth: empty, `3`, `3/2`, `/2`. */
function writeLength(ticks: number): string {
  const divisor = commonDivisor(ticks, UNIT);
  const upper = ticks / divisor;
  const lower = UNIT / divisor;
  const multiple = upper === 1 ? '' : `${upper}`;
  return lower === 1 ? multiple : `${multiple}/${lower}`;
}
