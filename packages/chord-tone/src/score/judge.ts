import { type Chords, type Cut, cutNotes, type Part, partOver } from './cut-notes.js';
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

/** Judges notes over chords, in their order. */
export function judgeNotes(
  notes: readonly Placed[],
  chords: Chords,
  weights: ScoreWeights,
): readonly Judged[] {
  const judged: Judged[] = [];
  const cuts = cutNotes(notes, chords, weights);
  judgeBackwards(cuts, { notes, chords, weights }, (one) => judged.push(one));
  return judged.reverse();
}

/**
 * The chord fit of notes over each of several charts whose chords change at the same times, so that the
 * notes are cut but once; null where nothing is judged.
 */
export function fitsOver(
  notes: readonly Placed[],
  charts: readonly Chords[],
  weights: ScoreWeights,
): readonly (number | null)[] {
  const [first] = charts;
  if (first === undefined) return [];
  const cuts = cutNotes(notes, first, weights);
  return charts.map((chords) => {
    let sum = 0;
    let total = 0;
    judgeBackwards(cuts, { notes, chords, weights }, ({ weight, credit }) => {
      sum += weight * credit;
      total += weight;
    });
    return total === 0 ? null : sum / total;
  });
}

/** What the parts of a take are judged by. */
interface Take {
  readonly notes: readonly Placed[];
  readonly chords: Chords;
  readonly weights: ScoreWeights;
}

/** Judges from the end, so that what a note moves to is known. */
function judgeBackwards(cuts: readonly Cut[], take: Take, tell: (judged: Judged) => void): void {
  const { changes } = take.chords;
  let here: Judged[] = [];
  let ahead: readonly Judged[] = [];
  let group = -1;
  for (let at = cuts.length - 1; at >= 0; at -= 1) {
    const cut = cuts[at] as Cut;
    if (cut.note.group !== group) {
      ahead = here;
      here = [];
      ({ group } = cut.note);
    }
    const judged = judgePart(partOver(cut, changes), ahead, take);
    tell(judged);
    if (!cut.held && !hasPitch(here, cut.note.pitch)) here.push(judged);
  }
}

/** Of notes of one pitch struck together one is enough to know what leads to it. */
function hasPitch(here: readonly Judged[], pitch: number): boolean {
  return here.some(({ part }) => part.note.pitch === pitch);
}

/** @param ahead the first part of each note struck next, one for each pitch */
function judgePart(part: Part, ahead: readonly Judged[], take: Take): Judged {
  const { weights, chords, notes } = take;
  const { beatTicks } = chords;
  const resolvesTo = resolutionOf(part, ahead, weights.resolveWithin * beatTicks);
  const turns = isTurn(part, ahead, beatTicks);
  const beats = (part.end - part.start) / beatTicks;
  const before = notes[part.note.place - 1]?.pitch;
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
