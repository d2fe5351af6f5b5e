import { type Chords, cutNote, type Part } from './cut-notes.js';
import { resolvedFigure } from './figure.js';
import type { Change } from './grid.js';
import { isTurn } from './idiom.js';
import type { NoteClass } from './note-class.js';
import type { Placed } from './place-notes.js';
import { resolutionOf } from './resolve.js';
import type { ScoreWeights } from './weights.js';

/** A part of a note with what it is to its chord, and what that is worth. */
export interface Judged {
  readonly part: Part;
  readonly class: NoteClass;
  /** 0 to 1. */
  readonly credit: number;
  /** What it counts for, in felt beats. */
  readonly weight: number;
  /** The note it resolves to, if any. */
  readonly resolvesTo: Placed | null;
}

/** Judges notes over chords, in their order. */
export function judgeNotes(
  notes: readonly Placed[],
  chords: Chords,
  weights: ScoreWeights,
): readonly Judged[] {
  const judged: Judged[] = [];
  judgeBackwards(notes, chords, weights, (one) => judged.push(one));
  return judged.reverse();
}

/** The chord fit of notes over chords alone; null where nothing is judged. */
export function fitOver(
  notes: readonly Placed[],
  chords: Chords,
  weights: ScoreWeights,
): number | null {
  let sum = 0;
  let total = 0;
  judgeBackwards(notes, chords, weights, ({ weight, credit }) => {
    sum += weight * credit;
    total += weight;
  });
  return total === 0 ? null : sum / total;
}

/** Judges from the end, so that what a note moves to is known. */
function judgeBackwards(
  notes: readonly Placed[],
  chords: Chords,
  weights: ScoreWeights,
  tell: (judged: Judged) => void,
): void {
  const { changes, beatTicks } = chords;
  let at = changes.length - 1;
  let here: Judged[] = [];
  let ahead: readonly Judged[] = [];
  let group = -1;
  for (let place = notes.length - 1; place >= 0; place -= 1) {
    const note = notes[place] as Placed;
    if (note.group !== group) {
      ahead = here;
      here = [];
      ({ group } = note);
    }
    while (at > 0 && (changes[at] as Change).start > note.start) at -= 1;
    const around = { ahead, before: notes[place - 1]?.pitch, beatTicks, weights };
    const parts = cutNote(note, at, chords, weights);
    for (let last = parts.length - 1; last >= 0; last -= 1) {
      const judged = judgePart(parts[last] as Part, around);
      tell(judged);
      if (last === 0 && !hasPitch(here, note.pitch)) here.push(judged);
    }
  }
}

/** Of notes of one pitch struck together one is enough to know what leads to it. */
function hasPitch(here: readonly Judged[], pitch: number): boolean {
  return here.length > 0 && here.some(({ part }) => part.note.pitch === pitch);
}

/** What judging a part looks at besides it. */
interface Around {
  /** The first part of each note struck next, one for each pitch. */
  readonly ahead: readonly Judged[];
  /** Pitch of the note before. */
  readonly before: number | undefined;
  readonly beatTicks: number;
  readonly weights: ScoreWeights;
}

function judgePart(part: Part, { ahead, before, beatTicks, weights }: Around): Judged {
  const resolvesTo = resolutionOf(part, ahead, weights.resolveWithin * beatTicks);
  const turns = isTurn(part, ahead, beatTicks);
  const beats = (part.end - part.start) / beatTicks;
  const noteClass = turns ? 'idiom' : classOf(part, resolvesTo, before, beats < weights.struck);
  if (noteClass === 'unjudged') {
    return { part, class: noteClass, credit: weights.credit.unjudged, weight: 0, resolvesTo };
  }
  const worth = weights.credit[noteClass];
  const credit =
    resolvesTo === null || noteClass === 'leaning'
      ? worth
      : Math.max(worth, weights.resolvedCredit);
  return { part, class: noteClass, credit, weight: weightOf(part, beats, weights), resolvesTo };
}

function classOf(
  { note, table, tone, held }: Part,
  resolvesTo: Placed | null,
  before: number | undefined,
  isBrief: boolean,
): NoteClass {
  const pitchClass = note.pitch % 12;
  const atRest = table.resting[pitchClass] as NoteClass;
  if (tone || table.chord === null || atRest === 'blue') return atRest;
  if (resolvesTo === null) return atRest === 'clash' && isBrief ? 'unresolved' : atRest;
  if (table.blue[pitchClass]) return 'blue';
  if (!held && isLeaning(note, resolvesTo)) return 'leaning';
  return resolvedFigure(before, note.pitch, resolvesTo.pitch);
}

/** Longer than what it resolves to, and on a stronger place. */
function isLeaning(note: Placed, target: Placed): boolean {
  return note.metre > target.metre && note.end - note.start > target.end - target.start;
}

/** From this length on a note is struck in full, in felt beats; a grace of half of it not at all. */
const FULLY_STRUCK = 1 / 4;

/** Its length, and what striking it counts: nothing where it is a grace note. */
function weightOf({ held }: Part, beats: number, { struck }: ScoreWeights): number {
  if (held) return beats;
  const stroke = Math.min(1, Math.max(0, (2 * beats) / FULLY_STRUCK - 1));
  return beats + struck * stroke;
}

/** Mean credit of all parts, by weight; null where nothing is judged. */
export function fitOf(judged: readonly Judged[]): number | null {
  let sum = 0;
  let total = 0;
  for (const { weight, credit } of judged) {
    sum += weight * credit;
    total += weight;
  }
  return total === 0 ? null : sum / total;
}
