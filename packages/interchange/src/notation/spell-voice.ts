import { type NoteValue, noteValues, tripletValues } from './note-value.js';
import type { BarEvent } from './write-bars.js';

/** A note or rest of one printed value: an event of a bar, or a part of one tied to the next. */
export interface SpelledNote extends BarEvent {
  /** Undefined where no printed value lasts so long. */
  readonly value: NoteValue | undefined;
  /** Its place in a tuplet, from 0, and how many notes and rests that has. */
  readonly tuplet?: { readonly at: number; readonly size: number };
}

/** What a voice of a bar is spelled in. */
export interface BarFrame {
  /** Ticks of a felt beat. */
  readonly beatTicks: number;
  /** Ticks of the bar; the beats of a pickup are counted from its end. */
  readonly length: number;
}

/**
 * The printed values of a voice in a bar. Where a beat is divided in three, notes and rests are cut at
 * its edges and tied, so that its values make whole tuplets.
 */
export function spellVoice(events: readonly BarEvent[], frame: BarFrame): readonly SpelledNote[] {
  const windows = tripletWindows(events, frame);
  const edges = windows.flatMap(({ start, end }) => [start, end]);
  const spelled = events
    .flatMap((event) => cutAt(event, edges))
    .flatMap((event) => spellEvent(event, isWithin(event, windows)));
  return markTuplets(spelled);
}

/** A stretch of whole beats that is divided in three. */
interface Window {
  readonly start: number;
  readonly end: number;
}

/** Twos divide down to a dotted 64th: its multiples are places that need no tuplet. */
const PLAIN_GRID = 30;
/** A 64th of a triplet. */
const TRIPLET_GRID = 40;

const isPlain = (ticks: number): boolean => ticks % PLAIN_GRID === 0;
const isTriplet = (ticks: number): boolean => ticks % TRIPLET_GRID === 0;

function tripletWindows(
  events: readonly BarEvent[],
  { beatTicks, length }: BarFrame,
): readonly Window[] {
  const places = events.map(({ offset }) => offset);
  const windows: Window[] = [];
  let start = -((beatTicks - (length % beatTicks)) % beatTicks);
  while (start < length) {
    const isLarge = isQuarterTriplet(places, start, beatTicks) && start + 2 * beatTicks <= length;
    const end = start + (isLarge ? 2 : 1) * beatTicks;
    windows.push(...(isLarge ? [{ start, end }] : divide({ start, end }, places)));
    start = end;
  }
  return windows.filter((window) => {
    const inside = placesWithin(places, window.start, window.end);
    return inside.every(isTriplet) && !inside.every(isPlain);
  });
}

/** A sixteenth. */
const SMALLEST_WINDOW = 240;

/** The parts of a window between its halves (or thirds, of a dotted beat) that something begins at. */
function divide(window: Window, places: readonly number[]): readonly Window[] {
  const { start, end } = window;
  const size = (end - start) / (isDotted(end - start) ? 3 : 2);
  if (size < SMALLEST_WINDOW) return [window];
  const cuts = placesWithin(places, start, end).filter((place) => (place - start) % size === 0);
  if (cuts.length === 0) return [window];
  const edges = [start, ...new Set(cuts), end];
  return edges
    .slice(1)
    .flatMap((edge, at) => divide({ start: edges[at] ?? start, end: edge }, places));
}

const isDotted = (ticks: number): boolean => ticks % 720 === 0;

function placesWithin(places: readonly number[], start: number, end: number): readonly number[] {
  return places.filter((place) => place > start && place < end);
}

/** Whether two beats are divided in three and nothing else: a triplet of quarters. */
function isQuarterTriplet(places: readonly number[], start: number, beatTicks: number): boolean {
  const inside = placesWithin(places, start, start + 2 * beatTicks);
  const third = (2 * beatTicks) / 3;
  return (
    inside.length > 0 &&
    inside.every((place) => place - start === third || place - start === 2 * third)
  );
}

function isWithin({ offset, duration }: BarEvent, windows: readonly Window[]): boolean {
  return windows.some(({ start, end }) => offset >= start && offset + duration <= end);
}

/** The event in parts that no place lies within, tied together. */
export function cutAt(event: BarEvent, places: readonly number[]): readonly BarEvent[] {
  const end = event.offset + event.duration;
  const inside = places.filter((place) => place > event.offset && place < end);
  if (inside.length === 0) return [event];
  const cut = Math.min(...inside);
  const isNote = event.pitches.length > 0;
  const { word: _word, graces: _graces, played: _played, ...rest } = event;
  const first = { ...event, duration: cut - event.offset, tiedTo: isNote };
  const second = { ...rest, offset: cut, duration: end - cut, tiedFrom: isNote };
  return [first, ...cutAt(second, inside)];
}

function spellEvent(event: BarEvent, inTriplet: boolean): readonly SpelledNote[] {
  const values = (inTriplet ? tripletValues(event.duration) : undefined) ??
    noteValues(event.duration) ?? [undefined];
  const spelled: SpelledNote[] = [];
  let rest: BarEvent = event;
  for (const value of values) {
    const [part = rest, after = rest] =
      value === undefined ? [rest] : cutAt(rest, [rest.offset + value.ticks]);
    spelled.push({ ...part, value });
    rest = after;
  }
  return spelled;
}

/** One digit is what ABC has for the notes of a tuplet. */
const LARGEST_TUPLET = 9;

/** Gathers triplet values to tuplets, each as short as it can be. */
function markTuplets(notes: readonly SpelledNote[]): readonly SpelledNote[] {
  const marked: SpelledNote[] = [];
  let open: SpelledNote[] = [];
  const close = (): void => {
    marked.push(...open.map((note, at) => ({ ...note, tuplet: { at, size: open.length } })));
    open = [];
  };
  for (const note of notes) {
    if (note.value?.triplet !== true) {
      close();
      marked.push(note);
      continue;
    }
    open.push(note);
    const ticks = open.reduce((sum, { duration }) => sum + duration, 0);
    if (isPlain(ticks) || open.length === LARGEST_TUPLET) close();
  }
  close();
  return marked;
}
