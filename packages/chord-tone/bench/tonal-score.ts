import {
  type ChangeScore,
  type NoteScore,
  SCORE_WEIGHTS,
  type ScoreMeasures,
} from '@reedplate/chord-tone';
import {
  judgeOver,
  type NamedReading,
  type NamedTake,
  namedBlind,
  namedReadings,
  namedShuffled,
} from './tonal-following.js';
import { type NamedJudged, namedFit, strengthAt } from './tonal-judge.js';
import {
  type NamedChart,
  type NamedSpan,
  type NamedTime,
  namedChanges,
  soundedNotes,
} from './tonal-line.js';
import { measureNotes } from './tonal-measures.js';
import { type Compare, tonesOf } from './tonal-names.js';
import { namedTotal } from './tonal-total.js';

// The same work as scoreLine on note names with tonal, written with care, for playing in even
// eighths: notes, changes, measures, both kinds of chance, the other readings and the total, equal to
// ours. Our bars, timing by bar, verdict and remarks it leaves out.

/** What is compared with a score. */
export interface NamedScore {
  readonly notes: readonly NoteScore[];
  readonly changes: readonly ChangeScore[];
  readonly measures: ScoreMeasures;
  readonly shuffled: number | null;
  readonly blind: number | null;
  readonly readings: readonly NamedReading[];
  readonly total: number;
}

/** Scores a line of names over a chart of names, in a key. */
export function namedScore(
  line: readonly NamedTime[],
  chart: NamedChart,
  compare: Compare,
  tonic: string,
): NamedScore {
  const changes = namedChanges(chart);
  const take: NamedTake = { notes: soundedNotes(line, chart), chart, compare };
  const judged = judgeOver(take, changes);
  const notes = judged.map((one) => noteScore(one, changes, chart));
  const landed = scoreLandings(judged, notes, changes, chart);
  const chordFit = namedFit(judged);
  const chords = new Set(changes.map(({ symbol }) => symbol).filter((symbol) => symbol !== ''));
  const hasChange = chordFit !== null && chords.size > 1;
  const shuffled = hasChange ? namedShuffled(judged, take) : null;
  const blind = hasChange ? namedBlind(take, changes) : null;
  const evidence = evidenceOf(judged, changes);
  const share = evidence / (evidence + SCORE_WEIGHTS.blindFrom);
  const chance =
    shuffled === null || blind === null ? null : (1 - share) * shuffled + share * blind;
  const following =
    chance === null
      ? null
      : chance >= 1
        ? 0
        : Math.max(0, ((chordFit ?? 0) - chance) / (1 - chance));
  const readings = chordFit === null ? [] : namedReadings(take, changes, tonic);
  const measures = measureNotes(notes, landed, line, chart, following);
  const total = namedTotal({ chordFit, following, readings, notes, chart });
  const frozen = { notes: Object.freeze(notes), changes: landed, measures };
  return Object.freeze({ ...frozen, shuffled, blind, readings, total });
}

/** Felt beats of weight, a chorus that is played again counted once. */
function evidenceOf(judged: readonly NamedJudged[], changes: readonly NamedSpan[]): number {
  const weights = new Map<string, number>();
  for (const { part, weight } of judged) {
    const chorus = changes[part.clock]?.chorus;
    const begin = changes.find((span) => span.chorus === chorus)?.start ?? 0;
    const key = [part.start - begin, part.end - part.start, part.note.midi].join(' ');
    weights.set(key, weights.get(key) ?? weight);
  }
  return [...weights.values()].reduce((sum, weight) => sum + weight, 0);
}

function noteScore(
  { part, class: kind, credit, weight, target }: NamedJudged,
  changes: readonly NamedSpan[],
  chart: NamedChart,
): NoteScore {
  const { note, start, end, change, clock, known } = part;
  const { pickup, barTicks, beatTicks } = chart;
  const bar = Math.floor((start - pickup) / barTicks);
  return Object.freeze({
    index: note.index,
    held: start !== note.start,
    bar: bar + 1,
    beat: (start - pickup - bar * barTicks) / beatTicks + 1,
    start,
    duration: end - start,
    pitch: note.midi,
    name: known.name as NoteScore['name'],
    chord: changes[change]?.symbol || null,
    degree: known.degree as NoteScore['degree'],
    push: change !== clock,
    class: kind,
    credit,
    weight,
    metre: strengthAt(start, chart),
    resolvesTo: target?.index ?? null,
  });
}

/** What sounds at each change, and whether the line shows it. */
function scoreLandings(
  judged: readonly NamedJudged[],
  notes: readonly NoteScore[],
  changes: readonly NamedSpan[],
  { beatTicks }: NamedChart,
): readonly ChangeScore[] {
  const { landing, landWithin } = SCORE_WEIGHTS;
  const landed = new Array<NoteScore | undefined>(changes.length).fill(undefined);
  const heard = changes.map(() => new Set<number>());
  for (let at = 0; at < judged.length; at += 1) {
    const { change, start, end } = (judged[at] as NamedJudged).part;
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
