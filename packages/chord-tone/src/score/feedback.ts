import type { Line, TimedNote } from '@reedplate/line';
import type { Chord } from '@reedplate/pitch';
import type { ScoringGrid } from './grid.js';
import type { Spellings } from './notes.js';
import type { ChangeScore, Feedback, NoteScore } from './score-types.js';
import type { Suggest } from './suggest.js';

/** What the remarks are drawn from. */
export interface FeedbackInput {
  readonly line: Line;
  readonly notes: readonly NoteScore[];
  readonly changes: readonly ChangeScore[];
  readonly grid: ScoringGrid;
  readonly suggest: Suggest;
  /** One for each chord table of the grid. */
  readonly spellings: readonly Spellings[];
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

type ChordsBySymbol = ReadonlyMap<string, Chord>;

/** Remarks on a scored line, in the order of time; about the whole line last. */
export function feedbackOn(input: FeedbackInput): readonly Feedback[] {
  const { confidence, outside, inside, barsMissed } = input;
  const chords = new Map(input.grid.tables.map(({ chord }) => [chord.symbol, chord]));
  const landings = landingRemarks(input, chords);
  const remarks = [...landings, ...noteRemarks(input, chords, landings)];
  remarks.sort((a, b) => a.bar - b.bar || a.beat - b.beat);
  if (outside > 0) remarks.push(remark('NOTES_OUTSIDE_CHART', { count: outside }));
  if (barsMissed > 0) remarks.push(remark('BARS_NOT_PLAYED', { count: barsMissed }));
  if (confidence < LITTLE) remarks.push(remark('LITTLE_TO_JUDGE', { count: inside }));
  return Object.freeze(remarks);
}

function landingRemarks(input: FeedbackInput, chords: ChordsBySymbol): readonly Feedback[] {
  const names = new Map(input.spellings.map((spelling) => [spelling.chord, spelling]));
  const remarks: Feedback[] = [];
  for (const { bar, beat, chord, index, landing, shown } of input.changes) {
    const at = { bar, beat, chord, index };
    const parsed = chords.get(chord);
    if (landing === 0 && index !== null && parsed !== undefined) {
      const { pitch } = input.line.notes[index] as TimedNote;
      const name = names.get(chord)?.names[pitch] ?? null;
      const suggestion = input.suggest(parsed, pitch) ?? null;
      remarks.push(remark('LANDED_OUTSIDE', { ...at, name, suggestion }));
    } else if (shown === false) {
      remarks.push(remark('CHANGE_NOT_SHOWN', at));
    }
  }
  return remarks;
}

/** Least metrical strength at which an unresolved note is worth a remark: a beat. */
const WORTH_A_REMARK = 0.5;

/** A note that was remarked on as a landing is not marked down twice. */
function noteRemarks(
  { notes, suggest }: FeedbackInput,
  chords: ChordsBySymbol,
  landings: readonly Feedback[],
): readonly Feedback[] {
  const said = new Set(landings.map(({ index, chord }) => `${index} ${chord}`));
  const remarks: Feedback[] = [];
  for (const note of notes) {
    const isWeak = note.class === 'unresolved' && !note.held && note.metre >= WORTH_A_REMARK;
    if (note.chord === null || !(isWeak || note.class === 'clash')) continue;
    const parsed = chords.get(note.chord);
    if (parsed === undefined || said.has(`${note.index} ${note.chord}`)) continue;
    const { bar, beat, chord, index, name, pitch } = note;
    const suggestion = suggest(parsed, pitch) ?? null;
    const code = isWeak ? 'UNRESOLVED' : 'CLASH';
    remarks.push(remark(code, { bar, beat, chord, index, name, suggestion }));
  }
  return remarks;
}

function remark(code: Feedback['code'], details: Partial<Omit<Feedback, 'code'>>): Feedback {
  return Object.freeze({
    code,
    bar: 1,
    beat: 1,
    chord: null,
    index: null,
    name: null,
    count: 1,
    suggestion: null,
    ...details,
  });
}
