import type { NoteNameWithOctave } from '@reedplate/pitch';
import type { FeedbackInput } from './feedback.js';
import { chordsMissed } from './feedback-whole.js';
import type { Judged } from './judge.js';
import { metreOf } from './place-notes.js';
import { remark } from './remark.js';
import type { Feedback, FeedbackCode } from './score-types.js';

/** One thing to remark on, before those alike are made one. */
interface Finding {
  readonly code: FeedbackCode;
  readonly bar: number;
  readonly beat: number;
  /** Symbol of the chord. */
  readonly chord: string;
  /** The note it is about; undefined where it is about a change. */
  readonly judged: Judged | undefined;
  /** What it costs, in felt beats of credit. */
  readonly cost: number;
}

/**
 * Remarks on notes and changes, those alike made one, what costs most first. None where the whole take
 * is a bar off or on another harp: its notes are not what is wrong.
 */
export function remarksOnNotes(input: FeedbackInput): readonly Feedback[] {
  const { fault } = input;
  const missed = fault === null ? [] : chordsMissed(fault, input);
  if (fault !== null && missed.length === 0) return [];
  const cured = new Set(missed.map(({ chord }) => chord?.symbol));
  const found = [...findChanges(input), ...findNotes(input)].filter(
    ({ chord }) => !cured.has(chord),
  );
  return [...grouped(found)]
    .sort((one, other) => costOf(other) - costOf(one))
    .map((group) => remarkOn(group, input));
}

/** What an unshown change costs: half a beat. Design choice. */
const UNSHOWN = 0.5;

function findChanges({ changes, judged }: FeedbackInput): readonly Finding[] {
  const parts = partsByNote(judged);
  return changes.flatMap((change): readonly Finding[] => {
    const { bar, beat, chord, index, landing, shown } = change;
    const at = index === null ? undefined : partOver(chord, parts.get(index) ?? [], judged);
    const landed = at === undefined ? undefined : judged[at];
    if (landing === 0 && at !== undefined && landed !== undefined) {
      const code = isKept(at, judged) ? 'NOTE_KEPT' : 'LANDED_OUTSIDE';
      return [{ code, bar, beat, chord, judged: landed, cost: landed.weight }];
    }
    if (shown !== false) return [];
    return [{ code: 'CHANGE_NOT_SHOWN', bar, beat, chord, judged: undefined, cost: UNSHOWN }];
  });
}

/** Places among the judged parts of each note, by its index in the line. */
function partsByNote(judged: readonly Judged[]): ReadonlyMap<number, readonly number[]> {
  const parts = new Map<number, number[]>();
  judged.forEach(({ part }, at) => {
    const known = parts.get(part.note.index);
    if (known === undefined) parts.set(part.note.index, [at]);
    else known.push(at);
  });
  return parts;
}

/** The part of a note that belongs to a chord. */
function partOver(
  chord: string,
  places: readonly number[],
  judged: readonly Judged[],
): number | undefined {
  return places.find((at) => judged[at]?.part.table.chord?.symbol === chord);
}

/** Whether a note was there before the change: held into it, or struck again. */
function isKept(at: number, judged: readonly Judged[]): boolean {
  const { part } = judged[at] as Judged;
  if (part.held) return true;
  let before = at - 1;
  while (before >= 0 && judged[before]?.part.start === part.start) before -= 1;
  return before >= 0 && (judged[before] as Judged).part.note.pitch % 12 === part.note.pitch % 12;
}

/** Least metrical strength at which an unresolved note is worth a remark: a beat. */
const WORTH_A_REMARK = 0.5;

function findNotes({ judged, grid, changes }: FeedbackInput): readonly Finding[] {
  // A note that is remarked on as a landing is not marked down twice.
  const landed = new Set(
    changes.filter(({ landing }) => landing === 0).map(({ index, chord }) => `${index} ${chord}`),
  );
  return judged.flatMap((one): readonly Finding[] => {
    const { part, class: noteClass, weight } = one;
    const chord = part.table.chord?.symbol;
    const isWeak =
      noteClass === 'unresolved' && !part.held && metreOf(part, grid) >= WORTH_A_REMARK;
    if (chord === undefined || !(isWeak || noteClass === 'clash')) return [];
    if (landed.has(`${part.note.index} ${chord}`)) return [];
    const fromBarOne = part.start - grid.pickup;
    const bar = Math.floor(fromBarOne / grid.barTicks);
    const beat = (fromBarOne - bar * grid.barTicks) / grid.beatTicks + 1;
    const code = isWeak ? 'UNRESOLVED' : 'CLASH';
    return [{ code, bar: bar + 1, beat, chord, judged: one, cost: weight }];
  });
}

/** Findings of one kind over one chord, and of one note where they are about notes. */
function grouped(found: readonly Finding[]): readonly (readonly Finding[])[] {
  const groups = new Map<string, Finding[]>();
  for (const finding of found) {
    const pitchClass = finding.judged === undefined ? '' : finding.judged.part.note.pitch % 12;
    const key = `${finding.code} ${finding.chord} ${pitchClass}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [finding]);
    else group.push(finding);
  }
  return [...groups.values()];
}

function costOf(group: readonly Finding[]): number {
  return group.reduce((sum, { cost }) => sum + cost, 0);
}

function remarkOn(group: readonly Finding[], input: FeedbackInput): Feedback {
  const [first] = group as readonly [Finding];
  const table = input.grid.tables.find(({ chord }) => chord.symbol === first.chord);
  const pitch = first.judged?.part.note.pitch ?? input.judged[0]?.part.note.pitch;
  const suggestion =
    table === undefined || pitch === undefined ? null : input.suggest(table.chord, pitch);
  return remark(first.code, {
    bars: [...new Set(group.map(({ bar }) => bar))],
    beat: first.beat,
    chord: first.chord,
    index: first.judged?.part.note.index ?? null,
    name: nameOf(first, input),
    count: group.length,
    suggestions: suggestion === null ? [] : [Object.freeze({ ...suggestion, chord: first.chord })],
  });
}

function nameOf({ judged }: Finding, { spellings }: FeedbackInput): NoteNameWithOctave | null {
  if (judged === undefined) return null;
  return spellings.get(judged.part.table)?.nameOf(judged.part.note.pitch) ?? null;
}
