import { type KeyName, ReedplateError } from '@reedplate/pitch';
import { type NoteValue, noteValues } from '../score/note-value.js';
import { staffPitch } from '../score/staff-pitch.js';
import type { BarEvent } from '../score/write-bars.js';
import { element } from './xml-text.js';

/** What an event is written with. */
export interface NoteContext {
  readonly key: KeyName;
  /** Counted from 1. */
  readonly voice: number;
}

/** The `<note>` elements of an event: one for each pitch of each printed value, tied together. */
export function writeEvent(event: BarEvent, context: NoteContext): readonly string[] {
  const values = noteValues(event.duration) ?? [undefined];
  return values.flatMap((value, at) => {
    const piece: NotePiece = {
      value,
      ticks: value?.ticks ?? event.duration,
      tiedFrom: event.tiedFrom || at > 0,
      tiedTo: event.tiedTo || at < values.length - 1,
      word: at === 0 ? event.word : undefined,
    };
    if (event.pitches.length === 0) return [writeNote(undefined, piece, false, context)];
    return event.pitches.map((pitch, index) => writeNote(pitch, piece, index > 0, context));
  });
}

interface NotePiece {
  /** Undefined where no printed value lasts so long. */
  readonly value: NoteValue | undefined;
  readonly ticks: number;
  readonly tiedFrom: boolean;
  readonly tiedTo: boolean;
  readonly word: string | undefined;
}

function writeNote(
  pitch: number | undefined,
  { value, ticks, tiedFrom, tiedTo, word }: NotePiece,
  isInChord: boolean,
  { key, voice }: NoteContext,
): string {
  const ties = pitch === undefined ? [] : tieTypes(tiedFrom, tiedTo);
  const shown = isInChord ? undefined : word;
  return element('note', [
    ...(isInChord ? [element('chord')] : []),
    pitch === undefined ? element('rest') : writePitch(pitch, key),
    element('duration', `${ticks}`),
    ...ties.map((type) => element('tie', '', { type })),
    element('voice', `${voice}`),
    ...writeValue(value),
    ...writeNotations(ties, shown),
    ...(shown === undefined ? [] : [writeLyric(shown)]),
  ]);
}

function tieTypes(tiedFrom: boolean, tiedTo: boolean): readonly ('stop' | 'start')[] {
  return [...(tiedFrom ? (['stop'] as const) : []), ...(tiedTo ? (['start'] as const) : [])];
}

/** Octaves of MusicXML begin at C0. */
const LOWEST = 12;

function writePitch(pitch: number, key: KeyName): string {
  if (pitch < LOWEST) {
    throw new ReedplateError({ code: 'PITCH_RANGE', value: pitch, expected: 'a note from C0 up' });
  }
  const { letter, alteration, octave } = staffPitch(pitch, key);
  return element('pitch', [
    element('step', letter),
    ...(alteration === 0 ? [] : [element('alter', `${alteration}`)]),
    element('octave', `${octave}`),
  ]);
}

function writeValue(value: NoteValue | undefined): readonly string[] {
  if (value === undefined) return [];
  const { type, dots, triplet } = value;
  const inTime = [element('actual-notes', '3'), element('normal-notes', '2')];
  return [
    element('type', type),
    ...Array.from({ length: dots }, () => element('dot')),
    ...(triplet ? [element('time-modification', inTime)] : []),
  ];
}

/** Tab is shown as a lyric; for programs it stands among the technical signs too. */
function writeNotations(
  ties: readonly ('stop' | 'start')[],
  word: string | undefined,
): readonly string[] {
  const technical = word === undefined ? [] : [element('other-technical', word)];
  const notations = [
    ...ties.map((type) => element('tied', '', { type })),
    ...(technical.length === 0 ? [] : [element('technical', technical)]),
  ];
  return notations.length === 0 ? [] : [element('notations', notations)];
}

function writeLyric(word: string): string {
  return element('lyric', [element('syllabic', 'single'), element('text', word)], { number: 1 });
}
