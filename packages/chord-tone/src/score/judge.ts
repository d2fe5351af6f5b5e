import { type Chords, cutNotes, type Part } from './cut-notes.js';
import { resolvedFigure } from './figure.js';
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

/** Judges notes over chords, from the end, so that what a note moves to is known. */
export function judgeNotes(
  notes: readonly Placed[],
  chords: Chords,
  weights: ScoreWeights,
): readonly Judged[] {
  const parts = cutNotes(notes, chords, weights);
  const struck = new Array<Judged | undefined>(notes.length);
  const judged = new Array<Judged>(parts.length);
  for (let at = parts.length - 1; at >= 0; at -= 1) {
    const part = parts[at] as Part;
    const one = judgePart(part, struck, notes, chords.beatTicks, weights);
    judged[at] = one;
    if (!part.held) struck[part.note.place] = one;
  }
  return judged;
}

function judgePart(
  part: Part,
  struck: readonly (Judged | undefined)[],
  notes: readonly Placed[],
  beatTicks: number,
  weights: ScoreWeights,
): Judged {
  const resolvesTo = resolutionOf(part, struck, weights.resolveWithin * beatTicks);
  const turns = isTurn(part, struck, beatTicks);
  const beats = (part.end - part.start) / beatTicks;
  const noteClass = turns ? 'idiom' : classOf(part, resolvesTo, notes, beats < weights.struck);
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
  notes: readonly Placed[],
  isBrief: boolean,
): NoteClass {
  const pitchClass = note.pitch % 12;
  const atRest = table.resting[pitchClass] as NoteClass;
  if (tone || table.chord === null || atRest === 'blue') return atRest;
  if (resolvesTo === null) return atRest === 'clash' && isBrief ? 'unresolved' : atRest;
  if (table.blue[pitchClass]) return 'blue';
  if (!held && isLeaning(note, resolvesTo)) return 'leaning';
  return resolvedFigure(notes[note.place - 1]?.pitch, note.pitch, resolvesTo.pitch);
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
