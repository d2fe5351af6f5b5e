import { commonDivisor } from '@reedplate/line';
import type { KeyName } from '@reedplate/pitch';
import { type NoteValue, noteValues } from '../score/note-value.js';
import type { BarChord, BarEvent, WrittenBar } from '../score/write-bars.js';
import type { Signature } from './key-field.js';
import { type BarAccidentals, markDoubled, writePitch } from './write-pitch.js';

/** What bars are written with. */
export interface BarContext {
  readonly key: KeyName;
  readonly signature: Signature;
  /** Ticks of a felt beat: notes within one are written together. */
  readonly beatTicks: number;
}

/** The music of a bar, without its bar lines: voices that overlap stand behind `&`. */
export function writeBar({ voices, chords }: WrittenBar, context: BarContext): string {
  const accidentals: BarAccidentals = new Map();
  return voices
    .map((events, at) => writeVoice(events, at === 0 ? chords : [], accidentals, context))
    .join(' & ');
}

/** A note or rest of one printed value, and what stands before it. */
interface Written {
  readonly offset: number;
  readonly value: NoteValue | undefined;
  readonly text: string;
}

function writeVoice(
  events: readonly BarEvent[],
  chords: readonly BarChord[],
  accidentals: BarAccidentals,
  context: BarContext,
): string {
  const pieces = events.flatMap((event) => splitAt(event, chords));
  const written = pieces.flatMap((event) => writeEvent(event, chords, accidentals, context));
  return written
    .map(({ offset, text }, at) => {
      const isNewBeat = at > 0 && offset % context.beatTicks === 0;
      return `${isNewBeat ? ' ' : ''}${tupletMark(written, at)}${text}`;
    })
    .join('');
}

/** A chord symbol stands before a note: one that comes within a note cuts it, tied. */
function splitAt(event: BarEvent, chords: readonly BarChord[]): readonly BarEvent[] {
  const end = event.offset + event.duration;
  const cut = chords.find(({ offset }) => offset > event.offset && offset < end)?.offset;
  if (cut === undefined) return [event];
  const { word: _, ...rest } = event;
  const first = { ...event, duration: cut - event.offset, tiedTo: true };
  return [first, ...splitAt({ ...rest, offset: cut, duration: end - cut }, chords)];
}

function writeEvent(
  event: BarEvent,
  chords: readonly BarChord[],
  accidentals: BarAccidentals,
  { key, signature }: BarContext,
): readonly Written[] {
  const { pitches, tiedTo, word } = event;
  markDoubled(pitches, key, accidentals);
  const names = pitches.map((pitch) => writePitch(pitch, key, signature, accidentals));
  const notes = pitches.length > 1 ? `[${names.join('')}]` : (names[0] ?? 'z');
  const values = noteValues(event.duration) ?? [undefined];
  let { offset } = event;
  return values.map((value, at) => {
    const ticks = value?.ticks ?? event.duration;
    const isTied = pitches.length > 0 && (tiedTo || at < values.length - 1);
    const before = `${chordAt(chords, offset)}${at === 0 && word !== undefined ? `"_${quotable(word)}"` : ''}`;
    const length = writeLength(value?.triplet === true ? (ticks * 3) / 2 : ticks);
    const written = { offset, value, text: `${before}${notes}${length}${isTied ? '-' : ''}` };
    offset += ticks;
    return written;
  });
}

function chordAt(chords: readonly BarChord[], at: number): string {
  const found = chords.find(({ offset }) => offset === at);
  return found === undefined ? '' : `"${found.chord?.symbol ?? 'N.C.'}"`;
}

function quotable(word: string): string {
  return word.replaceAll('"', '″').replaceAll(/\s+/gu, ' ');
}

/** The mark before a run of triplet values that stand one after another; empty elsewhere. */
function tupletMark(written: readonly Written[], at: number): string {
  const isTriplet = (index: number): boolean => written[index]?.value?.triplet === true;
  if (!isTriplet(at) || runsOn(written, at)) return '';
  let length = 1;
  while (length < LONGEST_RUN && isTriplet(at + length)) length += 1;
  return length === 3 ? '(3' : `(3:2:${length}`;
}

/** One digit is what the mark has for its notes. */
const LONGEST_RUN = 9;

/** Whether the triplet at an index is inside a run that a mark before it has opened. */
function runsOn(written: readonly Written[], at: number): boolean {
  let before = 0;
  while (written[at - 1 - before]?.value?.triplet === true) before += 1;
  return before % LONGEST_RUN !== 0;
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
