import {
  type ChangeScore,
  type NoteClass,
  type NoteScore,
  SCORE_WEIGHTS,
  type ScoreMeasures,
} from '@reedplate/chord-tone';
import {
  cutNotes,
  type NamedChart,
  type NamedSpan,
  type NamedTime,
  namedChanges,
  type Part,
  type Sounded,
  soundedNotes,
} from './tonal-line.js';
import { measureNotes } from './tonal-measures.js';
import { type Compare, tonesOf } from './tonal-names.js';

// The same work as scoreLine on note names with tonal, written with care, for playing in even
// eighths: the notes, the changes and the measures, equal to ours. Our bars, total, chance level and
// remarks it leaves out.

/** What is compared with a score. */
export interface NamedScore {
  readonly notes: readonly NoteScore[];
  readonly changes: readonly ChangeScore[];
  readonly measures: ScoreMeasures;
}

/** Scores a line of names over a chart of names. */
export function namedScore(
  line: readonly NamedTime[],
  chart: NamedChart,
  compare: Compare,
): NamedScore {
  const { pushWithin, resolveWithin } = SCORE_WEIGHTS;
  const changes = namedChanges(chart);
  const sounded = soundedNotes(line);
  const cutting = { changes, compare, pushWithin: pushWithin * chart.beatTicks };
  const parts = cutNotes(sounded, cutting);
  const targets = findTargets(sounded, parts, resolveWithin * chart.beatTicks);
  const notes: NoteScore[] = [];
  for (let at = 0; at < parts.length; at += 1) {
    notes.push(judgePart(parts[at] as Part, targets[at], sounded, changes, chart));
  }
  const landed = scoreLandings(parts, notes, changes, chart);
  return Object.freeze({
    notes: Object.freeze(notes),
    changes: landed,
    measures: measureNotes(notes, landed, line, chart),
  });
}

const TOGETHER = 1 / 16;
const STEPS = [1, -1, 2, -2] as const;

/** The note that each part resolves to: a tone a step away, struck next, within the window. */
function findTargets(
  notes: readonly Sounded[],
  parts: readonly Part[],
  within: number,
): readonly (Sounded | undefined)[] {
  const targets = new Array<Sounded | undefined>(parts.length).fill(undefined);
  let past = notes.length;
  let tones: Tones = new Map();
  while (past > 0) {
    const low = firstStruckWith(notes, past - 1, within * TOGETHER);
    const next = notes[past];
    for (let place = low; place < past && next !== undefined; place += 1) {
      const { midi, firstPart, parts: count } = notes[place] as Sounded;
      const last = parts[firstPart + count - 1] as Part;
      if (count === 0 || last.isTone) continue;
      const wait = next.start - last.start;
      if (wait > 0 && wait <= within) targets[firstPart + count - 1] = aStepFrom(midi, tones);
    }
    tones = tonesAmong(notes, low, past, parts);
    past = low;
  }
  return targets;
}

/** Chord tones struck together, by pitch. */
type Tones = ReadonlyMap<number, Sounded>;

function firstStruckWith(notes: readonly Sounded[], place: number, together: number): number {
  const onset = (notes[place] as Sounded).start;
  let low = place;
  while (low > 0 && onset - (notes[low - 1] as Sounded).start <= together) low -= 1;
  return low;
}

function tonesAmong(
  notes: readonly Sounded[],
  low: number,
  past: number,
  parts: readonly Part[],
): Tones {
  const tones = new Map<number, Sounded>();
  for (let place = past - 1; place >= low; place -= 1) {
    const note = notes[place] as Sounded;
    if (note.parts > 0 && parts[note.firstPart]?.isTone) tones.set(note.midi, note);
  }
  return tones;
}

function aStepFrom(midi: number, tones: Tones): Sounded | undefined {
  const step = STEPS.find((other) => tones.has(midi + other));
  return step === undefined ? undefined : tones.get(midi + step);
}

function judgePart(
  { note, start, end, clock, known, change }: Part,
  target: Sounded | undefined,
  notes: readonly Sounded[],
  changes: readonly NamedSpan[],
  { pickup, barTicks, beatTicks }: NamedChart,
): NoteScore {
  const { credit, resolvedCredit, struck } = SCORE_WEIGHTS;
  const beats = (end - start) / beatTicks;
  const held = start !== note.start;
  const kind = classOf(note, target, known, notes, beats < struck);
  const worth = credit[kind];
  const bar = Math.floor((start - pickup) / barTicks);
  const beat = (start - pickup - bar * barTicks) / beatTicks;
  return Object.freeze({
    index: note.index,
    held,
    bar: bar + 1,
    beat: beat + 1,
    start,
    duration: end - start,
    pitch: note.midi,
    name: known.name as NoteScore['name'],
    chord: changes[change]?.symbol || null,
    degree: known.degree as NoteScore['degree'],
    push: change !== clock,
    class: kind,
    credit: target === undefined || kind === 'unjudged' ? worth : Math.max(worth, resolvedCredit),
    weight: kind === 'unjudged' ? 0 : beats + (held ? 0 : struck),
    metre: strengthOf(beat, barTicks / beatTicks),
    resolvesTo: target?.index ?? null,
  });
}

function classOf(
  { midi, place }: Sounded,
  target: Sounded | undefined,
  { tone, resting, blue }: Part['known'],
  notes: readonly Sounded[],
  isBrief: boolean,
): NoteClass {
  if (tone !== 0 || resting === 'blue') return resting;
  if (target === undefined) return resting === 'clash' && isBrief ? 'unresolved' : resting;
  if (blue) return 'blue';
  const before = notes[place - 1]?.midi;
  if (before === target.midi) return 'neighbour';
  const reached = before === undefined ? 0 : midi - before;
  const isOnward = reached !== 0 && reached > 0 === target.midi > midi;
  return isOnward && Math.abs(reached) <= 2 ? 'passing' : 'approach';
}

const NEAR = 1 / 12 - 1e-9;

function strengthOf(beat: number, beats: number): number {
  const nearest = Math.round(beat);
  if (Math.abs(beat - nearest) < NEAR) {
    if (nearest % beats === 0) return 1;
    return nearest * 2 === beats ? 0.75 : 0.5;
  }
  const within = beat % 1;
  const isHalf = Math.abs(within - 1 / 2) < NEAR || Math.abs(within - 2 / 3) < NEAR;
  return isHalf || Math.abs(within - 1 / 3) < NEAR / 2 ? 0.25 : 0;
}

/** What sounds at each change, and whether the line shows it. */
function scoreLandings(
  parts: readonly Part[],
  notes: readonly NoteScore[],
  changes: readonly NamedSpan[],
  { beatTicks }: NamedChart,
): readonly ChangeScore[] {
  const { landing, landWithin } = SCORE_WEIGHTS;
  const landed = new Array<NoteScore | undefined>(changes.length).fill(undefined);
  const heard = changes.map(() => new Set<number>());
  for (let at = 0; at < parts.length; at += 1) {
    const { change, start, end } = parts[at] as Part;
    const note = notes[at] as NoteScore;
    heard[change]?.add(note.pitch % 12);
    if (end - start < beatTicks / 8) continue;
    if (start > (changes[change]?.start ?? 0) + landWithin * beatTicks) continue;
    const first = landed[change];
    const lead = first?.start ?? Number.POSITIVE_INFINITY;
    const isBetter = first !== undefined && landing[note.class] > landing[first.class];
    if (start < lead || (start === lead && isBetter)) landed[change] = note;
  }
  const scores = changes.map(({ bar, beat, symbol, numeral }, at) => {
    const note = landed[at];
    const before = at === 1 ? changes[changes.length - 1] : changes[at - 1];
    const isRoot = note?.class === 'root';
    return Object.freeze({
      bar,
      beat,
      chord: symbol,
      numeral,
      index: note?.index ?? null,
      class: note?.class ?? null,
      landing: note === undefined ? null : landing[note.class],
      shown: isRoot || isShown(symbol, before?.symbol ?? '', heard[at] ?? new Set()),
    });
  });
  return Object.freeze(scores.filter(({ chord }) => chord !== ''));
}

/** Whether a tone is heard that the chord before did not have; null where there is none to hear. */
function isShown(symbol: string, before: string, heard: ReadonlySet<number>): boolean | null {
  if (symbol === '' || before === '' || heard.size === 0) return null;
  const known = tonesOf(before);
  const fresh = tonesOf(symbol).filter((tone) => !known.includes(tone));
  return fresh.length === 0 ? null : fresh.some((tone) => heard.has(tone));
}
