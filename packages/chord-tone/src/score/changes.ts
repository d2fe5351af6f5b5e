import type { ChordTable } from './chord-table.js';
import type { Change, ScoringGrid } from './grid.js';
import type { Judged } from './judge.js';
import type { ChangeScore } from './score-types.js';
import type { ScoreWeights } from './weights.js';

/** Shortest note heard as landing, in felt beats: less is a late release. Design choice. */
const SHORTEST_LANDING = 1 / 8;

/** What happened at each change of a judged line. */
export function scoreChanges(
  judged: readonly Judged[],
  grid: ScoringGrid,
  weights: ScoreWeights,
): readonly ChangeScore[] {
  const heard = hearChanges(judged, grid, weights);
  const { changes } = grid;
  const scores: ChangeScore[] = [];
  // A blues goes round: what comes before its first chord is its last.
  let before = (changes.at(-1) as Change).table;
  for (let at = 1; at < changes.length; at += 1) {
    const change = changes[at] as Change;
    const { chord } = change.table;
    if (chord !== null) {
      scores.push(scoreChange(change, chord.symbol, before, heard[at] ?? NOTHING, weights));
    }
    before = change.table;
  }
  return Object.freeze(scores);
}

/** What is heard while a chord lasts. */
interface HeardOver {
  /** What sounds at the change. */
  landing: Judged | undefined;
  readonly pitchClasses: Set<number>;
}

const NOTHING: HeardOver = { landing: undefined, pitchClasses: new Set() };

function hearChanges(
  judged: readonly Judged[],
  { changes, beatTicks }: ScoringGrid,
  { landing, landWithin }: ScoreWeights,
): readonly (HeardOver | undefined)[] {
  const heard = new Array<HeardOver | undefined>(changes.length);
  for (const one of judged) {
    const { part } = one;
    const here = heard[part.change] ?? { landing: undefined, pitchClasses: new Set() };
    heard[part.change] = here;
    here.pitchClasses.add(part.note.pitch % 12);
    if (part.end - part.start < SHORTEST_LANDING * beatTicks) continue;
    if (part.start > (changes[part.change] as Change).start + landWithin * beatTicks) continue;
    if (isBetterLanding(one, here.landing, landing)) here.landing = one;
  }
  return heard;
}

/**
 * A push is there before a note held over the change, though struck after it. Of notes struck together
 * the best counts: a chord lands if one of its notes does.
 */
function isBetterLanding(
  one: Judged,
  first: Judged | undefined,
  worth: ScoreWeights['landing'],
): boolean {
  if (first === undefined || one.part.start < first.part.start) return true;
  return one.part.start === first.part.start && worth[one.class] > worth[first.class];
}

function scoreChange(
  { bar, beat, numeral, table }: Change,
  chord: string,
  before: ChordTable,
  { landing, pitchClasses }: HeardOver,
  weights: ScoreWeights,
): ChangeScore {
  const noteClass = landing?.class ?? null;
  return Object.freeze({
    bar,
    beat,
    chord,
    numeral,
    index: landing?.part.note.index ?? null,
    class: noteClass,
    landing: noteClass === null ? null : weights.landing[noteClass],
    shown: noteClass === 'root' || isShown(table, before, pitchClasses),
  });
}

function isShown(
  { tone }: ChordTable,
  before: ChordTable,
  heard: ReadonlySet<number>,
): boolean | null {
  if (before.chord === null || heard.size === 0) return null;
  const fresh = tone.map((isTone, at) => isTone === 1 && before.tone[at] === 0);
  if (!fresh.includes(true)) return null;
  return fresh.some((isFresh, pitchClass) => isFresh && heard.has(pitchClass));
}
