import { Interval, Note } from 'tonal';

// The same work as makeHarp, soundings and soundingsOfPitch, on note names with tonal.

/** A sounding by note name. */
export interface NamedSounding {
  readonly hole: number;
  readonly breath: 'blow' | 'draw';
  readonly technique: 'natural' | 'bend' | 'overblow' | 'overdraw';
  readonly depth: number;
  readonly note: string;
}

/** A harp's soundings, and the same by MIDI number. */
export interface NamedHarp {
  readonly all: readonly NamedSounding[];
  readonly ofPitch: ReadonlyMap<number, readonly NamedSounding[]>;
}

/** How the names are worked out: with tonal at every step, or with every answer remembered. */
export interface NameTools {
  readonly transpose: (note: string, interval: string) => string;
  readonly midi: (note: string) => number;
}

export const ASK_EVERY_TIME: NameTools = {
  transpose: (note, interval) => Note.transpose(note, interval),
  midi: (note) => Note.midi(note) ?? 0,
};

/** Every distinct question is put to tonal once, and its answer kept for the next harp. */
export function rememberAnswers(): NameTools {
  const transposed = new Map<string, Map<string, string>>();
  const numbers = new Map<string, number>();
  return {
    transpose: (note, interval) => {
      let ofNote = transposed.get(note);
      if (ofNote === undefined) {
        ofNote = new Map();
        transposed.set(note, ofNote);
      }
      let answer = ofNote.get(interval);
      if (answer === undefined) {
        answer = Note.transpose(note, interval);
        ofNote.set(interval, answer);
      }
      return answer;
    },
    midi: (note) => {
      let number = numbers.get(note);
      if (number === undefined) {
        number = Note.midi(note) ?? 0;
        numbers.set(note, number);
      }
      return number;
    },
  };
}

const BLOW = ['C4', 'E4', 'G4', 'C5', 'E5', 'G5', 'C6', 'E6', 'G6', 'C7'] as const;
const DRAW = ['D4', 'G4', 'B4', 'D5', 'F5', 'A5', 'B5', 'D6', 'F6', 'A6'] as const;
const DOWN = [1, 2, 3, 4, 5].map((semitones) => `-${Interval.fromSemitones(semitones)}`);

/** The standard harp an interval away from C, with all its soundings and the lookup by pitch. */
export function namedHarp(interval: string, { transpose, midi }: NameTools): NamedHarp {
  const all: NamedSounding[] = [];
  for (const [index, written] of BLOW.entries()) {
    const hole = index + 1;
    const blow = transpose(written, interval);
    const draw = transpose(DRAW[index] as string, interval);
    const gap = midi(draw) - midi(blow);
    const higher = gap > 0 ? draw : blow;
    const over = transpose(higher, '2m');
    const bends = DOWN.slice(0, Math.max(0, Math.abs(gap) - 1));
    const bent = bends.map((down, at): NamedSounding => {
      const breath = gap > 0 ? 'draw' : 'blow';
      return { hole, breath, technique: 'bend', depth: at + 1, note: transpose(higher, down) };
    });
    all.push({ hole, breath: 'blow', technique: 'natural', depth: 0, note: blow });
    if (gap > 0) all.push({ hole, breath: 'blow', technique: 'overblow', depth: 1, note: over });
    else all.push(...bent);
    all.push({ hole, breath: 'draw', technique: 'natural', depth: 0, note: draw });
    if (gap > 0) all.push(...bent);
    else all.push({ hole, breath: 'draw', technique: 'overdraw', depth: 1, note: over });
  }
  return { all, ofPitch: byPitch(all, midi) };
}

function byPitch(
  all: readonly NamedSounding[],
  midi: NameTools['midi'],
): ReadonlyMap<number, readonly NamedSounding[]> {
  const ofPitch = new Map<number, NamedSounding[]>();
  for (const sounding of all) {
    const pitch = midi(sounding.note);
    const alike = ofPitch.get(pitch);
    if (alike === undefined) ofPitch.set(pitch, [sounding]);
    else alike.push(sounding);
  }
  return ofPitch;
}
