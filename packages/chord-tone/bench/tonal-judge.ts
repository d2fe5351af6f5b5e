import { type NoteClass, SCORE_WEIGHTS } from '@reedplate/chord-tone';
import type { NamedChart, Part, Sounded } from './tonal-line.js';
import { chordOf, midiOf } from './tonal-names.js';

// What each part of a note is to its chord, worked out from the end on note names.

/** A part of a note, judged. */
export interface NamedJudged {
  readonly part: Part;
  readonly class: NoteClass;
  readonly credit: number;
  readonly weight: number;
  /** The note it resolves to. */
  readonly target: Sounded | undefined;
}

const TOGETHER = 1 / 16;

/** Judges the parts of notes, in their order. */
export function judgeParts(
  notes: readonly Sounded[],
  parts: readonly Part[],
  chart: NamedChart,
): readonly NamedJudged[] {
  const judged = new Array<NamedJudged>(parts.length);
  let ahead: readonly NamedJudged[] = [];
  for (let past = notes.length; past > 0; ) {
    const low = firstStruckWith(notes, past - 1, TOGETHER * chart.beatTicks);
    const here = new Map<number, NamedJudged>();
    for (let place = past - 1; place >= low; place -= 1) {
      const { firstPart, parts: count, midi } = notes[place] as Sounded;
      for (let at = firstPart + count - 1; at >= firstPart; at -= 1) {
        const last = at === firstPart + count - 1;
        const one = judgePart(parts[at] as Part, last, notes[place - 1], ahead, chart);
        judged[at] = one;
        if (at === firstPart && !here.has(midi)) here.set(midi, one);
      }
    }
    ahead = [...here.values()];
    past = low;
  }
  return judged;
}

function firstStruckWith(notes: readonly Sounded[], place: number, together: number): number {
  const onset = (notes[place] as Sounded).start;
  let low = place;
  while (low > 0 && onset - (notes[low - 1] as Sounded).start <= together) low -= 1;
  return low;
}

function judgePart(
  part: Part,
  last: boolean,
  before: Sounded | undefined,
  ahead: readonly NamedJudged[],
  chart: NamedChart,
): NamedJudged {
  const { credit, resolvedCredit, struck } = SCORE_WEIGHTS;
  const { beatTicks } = chart;
  const open = last && !part.isTone;
  const target = open ? targetOf(part, ahead, SCORE_WEIGHTS.resolveWithin * beatTicks) : undefined;
  const beats = (part.end - part.start) / beatTicks;
  const turns = open && isTurn(part, ahead, beatTicks);
  const kind = turns ? 'idiom' : classOf(part, target, before, beats < struck, chart);
  const worth = credit[kind];
  if (kind === 'unjudged') return { part, class: kind, credit: worth, weight: 0, target };
  const isResolved = target !== undefined && kind !== 'leaning';
  const stroke = part.start === part.note.start ? Math.min(1, Math.max(0, 8 * beats - 1)) : 0;
  const value = isResolved ? Math.max(worth, resolvedCredit) : worth;
  return { part, class: kind, credit: value, weight: beats + struck * stroke, target };
}

const STEPS = [1, -1, 2, -2] as const;

function targetOf(
  { note, start }: Part,
  ahead: readonly NamedJudged[],
  within: number,
): Sounded | undefined {
  for (const step of STEPS) {
    const next = ahead.find(({ part }) => part.isTone && part.note.midi === note.midi + step);
    const wait = (next?.part.note.start ?? start) - start;
    if (wait > 0 && wait <= within) return next?.part.note;
  }
  for (const next of [...ahead].reverse()) {
    const through = targetThrough(note.midi, start, next, within);
    if (through !== undefined) return through;
  }
  return undefined;
}

/** Through a repetition, a second passing note, or the other side of an enclosure. */
function targetThrough(
  midi: number,
  start: number,
  { part, target }: NamedJudged,
  within: number,
): Sounded | undefined {
  if (part.isTone || target === undefined || part.note.start <= start) return undefined;
  const wait = target.start - start;
  const [first, there] = [part.note.midi - midi, target.midi - part.note.midi];
  const runs = first * there > 0 && Math.abs(first) <= 2 && Math.abs(there) <= 2;
  if (first === 0 || runs) return wait <= 2 * within ? target : undefined;
  const here = first + there;
  return here * there < 0 && Math.abs(here) <= 2 && wait <= within ? target : undefined;
}

const chromas = new Map<string, number>();

function rootOf(symbol: string): number {
  let chroma = chromas.get(symbol);
  if (chroma === undefined) {
    chroma = midiOf(`${chordOf(symbol).tonic ?? 'C'}4`) % 12;
    chromas.set(symbol, chroma);
  }
  return chroma;
}

/** Flat third to third or root, fourth to such a flat third, flat fifth to such a fourth. */
function isTurn(part: Part, ahead: readonly NamedJudged[], beatTicks: number): boolean {
  const symbol = part.change === part.clock ? part.here : part.coming;
  if (symbol === '') return false;
  const root = rootOf(symbol);
  const from = (part.note.midi - root + 12) % 12;
  if (from !== 3 && from !== 5 && from !== 6) return false;
  return ahead.some((next) => {
    if (next.part.note.start - part.start > 4 * beatTicks) return false;
    const to = (next.part.note.midi - root + 12) % 12;
    const nextSymbol = next.part.change === next.part.clock ? next.part.here : next.part.coming;
    const goesOn = next.class === 'idiom' && rootOf(nextSymbol) === root;
    if (next.part.note.midi === part.note.midi) return goesOn;
    if (from !== 3) return goesOn && to === (from === 5 ? 3 : 5);
    return to === 0 || (to === 4 && chordOf(symbol).intervals.includes('3M'));
  });
}

function classOf(
  { note, start, known }: Part,
  target: Sounded | undefined,
  before: Sounded | undefined,
  isBrief: boolean,
  chart: NamedChart,
): NoteClass {
  const { tone, resting, blue } = known;
  if (tone !== 0 || resting === 'blue') return resting;
  if (target === undefined) return resting === 'clash' && isBrief ? 'unresolved' : resting;
  if (blue) return 'blue';
  if (start === note.start && isLeaning(note, target, chart)) return 'leaning';
  if (before?.midi === target.midi) return 'neighbour';
  const reached = before === undefined ? 0 : note.midi - before.midi;
  const isOnward = reached !== 0 && reached > 0 === target.midi > note.midi;
  return isOnward && Math.abs(reached) <= 2 ? 'passing' : 'approach';
}

function isLeaning(note: Sounded, target: Sounded, chart: NamedChart): boolean {
  const isLonger = note.end - note.start > target.end - target.start;
  return isLonger && strengthAt(note.start, chart) > strengthAt(target.start, chart);
}

const NEAR = 1 / 12 - 1e-9;

/** Metrical strength of a tick of even playing. */
export function strengthAt(tick: number, { pickup, barTicks, beatTicks }: NamedChart): number {
  const fromBarOne = tick - pickup;
  const beat = (fromBarOne - Math.floor(fromBarOne / barTicks) * barTicks) / beatTicks;
  const beats = barTicks / beatTicks;
  const nearest = Math.round(beat);
  if (Math.abs(beat - nearest) < NEAR) {
    if (nearest % beats === 0) return 1;
    return nearest * 2 === beats ? 0.75 : 0.5;
  }
  const within = beat % 1;
  const isHalf = Math.abs(within - 1 / 2) < NEAR || Math.abs(within - 2 / 3) < NEAR;
  return isHalf || Math.abs(within - 1 / 3) < NEAR / 2 ? 0.25 : 0;
}

/** Mean credit by weight; null where nothing is judged. */
export function namedFit(judged: readonly NamedJudged[]): number | null {
  let [sum, total] = [0, 0];
  for (const { weight, credit } of judged) {
    sum += weight * credit;
    total += weight;
  }
  return total === 0 ? null : sum / total;
}
