import type { KeyName } from '@reedplate/pitch';
import {
  type AlteredPlaces,
  accidentalsOf,
  type ReadPitch,
  type ShownAccidental,
} from '../notation/accidentals.js';
import { beamNotes } from '../notation/beam-notes.js';
import { type SpelledNote, spellVoice } from '../notation/spell-voice.js';
import type { WrittenBar } from '../notation/write-bars.js';
import { writeEvent } from './write-note.js';

interface BarSpelling {
  readonly key: KeyName;
  readonly beatTicks: number;
}

/** The notes of each voice of a bar, with the signs that a reader needs across all voices. */
export function spellBar(bar: WrittenBar, { key, beatTicks }: BarSpelling, before: AlteredPlaces) {
  const frame = { beatTicks, length: bar.length };
  const voices = bar.voices.map((events) => spellVoice(events, frame));
  const read = voices
    .flatMap((notes, voice) => notes.map((note, index) => ({ note, voice, index })))
    .sort((a, b) => a.note.offset - b.note.offset || a.voice - b.voice);
  const { shown, altered } = accidentalsOf(
    read.flatMap(({ note }) => pitchesOf(note)),
    key,
    before,
  );
  const signs = voices.map((notes) =>
    notes.map((): readonly (ShownAccidental | undefined)[] => []),
  );
  let at = 0;
  for (const { note, voice, index } of read) {
    const count = pitchesOf(note).length;
    const ofVoice = signs[voice];
    if (ofVoice !== undefined) ofVoice[index] = shown.slice(at, at + count);
    at += count;
  }
  const notes = voices.map((spelled, voice) => {
    const beams = beamNotes(spelled, frame);
    return spelled.flatMap((note, index) => {
      const accidentals = signs[voice]?.[index] ?? [];
      return writeEvent(note, { key, voice: voice + 1, beams: beams[index] ?? [], accidentals });
    });
  });
  return { notes, altered };
}

/** The pitches of a printed note as they are read: grace notes first. */
function pitchesOf({ pitches, graces = [], tiedFrom, chord }: SpelledNote): readonly ReadPitch[] {
  return [
    ...graces.flatMap((together) =>
      together.map(({ pitch }) => ({ pitch, tiedFrom: false, chord })),
    ),
    ...pitches.map((pitch) => ({ pitch, tiedFrom, chord })),
  ];
}
