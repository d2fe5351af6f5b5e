import type { Line, TimedNote } from '@reedplate/line';
import type { Chord } from '@reedplate/pitch';
import type { ScoringGrid } from './grid.js';
import type { Spelling, Spellings } from './notes.js';
import type { ChangeScore, Feedback, NoteScore } from './score-types.js';
import type { Suggest } from './suggest.js';

/** What the remarks are drawn from. */
export interface FeedbackInput {
  readonly line: Line;
  readonly notes: readonly NoteScore[];
  readonly changes: readonly ChangeScore[];
  readonly grid: ScoringGrid;
  readonly suggest: Suggest;
  readonly spellings: Spellings;
  /** 0.5 to 1. */
  readonly confidence: number;
  /** How many notes were judged by no chord. */
  readonly outside: number;
  /** How many were. */
  readonly inside: number;
  /** Bars without a note, where they are too many for the total to count in full; else 0. */
  readonly barsMissed: number;
}

/** Confidence below which the score says that there is little to judge. Design choice. */
const LITTLE = 0.8;

/** Remarks on a scored line, in the order of time; about the whole line last. */
export function feedbackOn(input: FeedbackInput): readonly Feedback[] {
  const { confidence, outside, inside, barsMissed } = input;
  const chords = chordsBySymbol(input.grid, input.spellings);
  const landings = landingRemarks(input, chords);
  const remarks = [...landings, ...noteRemarks(input, chords, chordsLanded(landings))];
  remarks.sort((a, b) => a.bar - b.bar || a.beat - b.beat);
  if (outside > 0) remarks.push(remark('NOTES_OUTSIDE_CHART', { count: outside }));
  if (barsMissed > 0) remarks.push(remark('BARS_NOT_PLAYED', { count: barsMissed }));
  if (confidence < LITTLE) remarks.push(remark('LITTLE_TO_JUDGE', { count: inside }));
  return Object.freeze(remarks);
}

interface SpelledChord {
  readonly chord: Chord;
  readonly spelling: Spelling;
}

type ChordsBySymbol = ReadonlyMap<string, SpelledChord>;

function chordsBySymbol({ tables }: ScoringGrid, spellings: Spellings): ChordsBySymbol {
  return new Map(
    tables.map((table) => {
      const { chord } = table;
      return [chord.symbol, { chord, spelling: spellings.get(table) as Spelling }];
    }),
  );
}

function landingRemarks(input: FeedbackInput, chords: ChordsBySymbol): readonly Feedback[] {
  const remarks: Feedback[] = [];
  for (const { bar, beat, chord, index, landing, shown } of input.changes) {
    const known = chords.get(chord);
    if (landing === 0 && index !== null && known !== undefined) {
      const { pitch } = input.line.notes[index] as TimedNote;
      const name = known.spelling.nameOf(pitch);
      const suggestion = input.suggest(known.chord, pitch);
      remarks.push(remark('LANDED_OUTSIDE', { bar, beat, chord, index, name, suggestion }));
    } else if (shown === false) {
      remarks.push(remark('CHANGE_NOT_SHOWN', { bar, beat, chord, index }));
    }
  }
  return remarks;
}

/** Chords by the index of the note that was remarked on as landing on them. */
type ChordsLanded = ReadonlyMap<number | null, readonly (string | null)[]>;

function chordsLanded(landings: readonly Feedback[]): ChordsLanded {
  const landed = new Map<number | null, readonly (string | null)[]>();
  for (const { index, chord } of landings) {
    const before = landed.get(index);
    landed.set(index, before === undefined ? [chord] : [...before, chord]);
  }
  return landed;
}

/** Least metrical strength at which an unresolved note is worth a remark: a beat. */
const WORTH_A_REMARK = 0.5;

/** A note that was remarked on as a landing is not marked down twice. */
function noteRemarks(
  { notes, suggest }: FeedbackInput,
  chords: ChordsBySymbol,
  landed: ChordsLanded,
): readonly Feedback[] {
  const remarks: Feedback[] = [];
  // By index: V8 makes an object of each step of for-of over a frozen list.
  for (let at = 0; at < notes.length; at += 1) {
    const note = notes[at] as NoteScore;
    const isWeak = note.class === 'unresolved' && !note.held && note.metre >= WORTH_A_REMARK;
    if (note.chord === null || !(isWeak || note.class === 'clash')) continue;
    const { bar, beat, chord, index, name, pitch } = note;
    const known = chords.get(note.chord);
    if (known === undefined || landed.get(index)?.includes(chord)) continue;
    const suggestion = suggest(known.chord, pitch);
    const code = isWeak ? 'UNRESOLVED' : 'CLASH';
    remarks.push(remark(code, { bar, beat, chord, index, name, suggestion }));
  }
  return remarks;
}

function remark(
  code: Feedback['code'],
  {
    bar = 1,
    beat = 1,
    chord = null,
    index = null,
    name = null,
    count = 1,
    suggestion = null,
  }: Details,
): Feedback {
  return Object.freeze({ code, bar, beat, chord, index, name, count, suggestion });
}

type Details = Partial<Omit<Feedback, 'code'>>;
