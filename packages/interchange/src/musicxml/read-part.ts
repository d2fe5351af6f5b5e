import { TICKS_PER_QUARTER } from '@reedplate/line';
import type {
  GraceNote,
  Jump,
  Measure,
  MeasureChord,
  MeasureGrace,
  MeasureNote,
  MeasureTempo,
} from '../notation/measure.js';
import type { WarningList } from '../warning.js';
import { symbolOfHarmony } from './harmony.js';
import { requireStaves } from './notation-limits.js';
import { type Ending, readBarlines } from './read-barlines.js';
import { jumpsOfBarlines, jumpsOfSound, sayJump, wordsOfDirection } from './read-jumps.js';
import { pitchOf, warnOfNotations } from './read-pitch.js';
import { loudnessOf } from './read-playing.js';
import { quartersOf } from './read-tempo.js';
import { child, childNumber, childrenOf, type XmlElement } from './xml-tree.js';

/** The measures of a part, for each of its staves; chord symbols go with the first. */
export type StaffMeasures = ReadonlyMap<number, readonly Measure[]>;

/** A part while it is read: what holds from measure to measure. */
interface PartState {
  /** Ticks of ours in one division of the file's. */
  scale: number;
  /** Semitones that notes sound above what is written. */
  transpose: number;
  ending: Ending | undefined;
  /** Velocity of notes that say none of their own. */
  loudness: number | undefined;
  readonly warnings: WarningList;
}

/** A measure while it is read. */
interface OpenMeasure {
  readonly number: number;
  readonly notes: Map<number, MeasureNote[]>;
  readonly graces: Map<number, GraceGroup[]>;
  readonly chords: MeasureChord[];
  readonly tempos: MeasureTempo[];
  readonly jumps: Jump[];
  at: number;
  /** Where the note before began: a note of its chord begins there too. */
  lastStart: number;
  length: number;
}

/** Grace notes that sound together, while they are read. */
interface GraceGroup extends MeasureGrace {
  readonly notes: GraceNote[];
}

/** Reads the measures of a part. */
export function readPart(measures: readonly XmlElement[], warnings: WarningList): StaffMeasures {
  const state: PartState = {
    scale: TICKS_PER_QUARTER,
    transpose: 0,
    ending: undefined,
    loudness: undefined,
    warnings,
  };
  const read = measures.map((measure, index) => readMeasure(measure, index + 1, state));
  const staves = new Set([1]);
  for (const { notes } of read) for (const staff of notes.keys()) staves.add(staff);
  requireStaves(staves.size);
  return new Map(
    [...staves]
      .sort((a, b) => a - b)
      .map((staff) => [
        staff,
        read.map(
          ({ notes, graces, chords, tempos, ...frame }): Measure => ({
            ...frame,
            notes: notes.get(staff) ?? [],
            ...(graces.has(staff) ? { graces: graces.get(staff) ?? [] } : {}),
            chords: staff === 1 ? chords : [],
            ...(staff === 1 && tempos.length > 0 ? { tempos } : {}),
          }),
        ),
      ]),
  );
}

type ReadMeasure = Omit<Measure, 'notes' | 'graces' | 'tempos'> &
  Pick<OpenMeasure, 'notes' | 'graces' | 'tempos'>;

function readMeasure(element: XmlElement, number: number, state: PartState): ReadMeasure {
  const open: OpenMeasure = {
    number,
    notes: new Map(),
    graces: new Map(),
    chords: [],
    tempos: [],
    jumps: [...jumpsOfBarlines(element)],
    at: 0,
    lastStart: 0,
    length: 0,
  };
  for (const each of element.children) READERS.get(each.name)?.(each, open, state);
  const { ending, ...bars } = readBarlines(element, state.ending);
  state.ending = ending.next;
  const { notes, graces, chords, tempos, length, jumps } = open;
  return {
    notes,
    graces,
    chords,
    tempos,
    length,
    ...bars,
    ...(ending.here === undefined ? {} : { endings: ending.here.numbers }),
    ...(jumps.length === 0 ? {} : { jumps }),
    where: { bar: number },
  };
}

type ElementReader = (element: XmlElement, open: OpenMeasure, state: PartState) => void;

const READERS: ReadonlyMap<string, ElementReader> = new Map([
  ['attributes', readAttributes],
  ['note', readNote],
  ['backup', (element, open, state) => move(open, -durationOf(element, state))],
  ['forward', (element, open, state) => move(open, durationOf(element, state))],
  ['harmony', readHarmony],
  ['sound', readSound],
  ['direction', readDirection],
]);

function move(open: OpenMeasure, ticks: number): void {
  open.at = Math.max(0, open.at + ticks);
  open.length = Math.max(open.length, open.at);
}

/** Longest note read, in ticks: a thousand quarter notes. */
const LONGEST = 1000 * TICKS_PER_QUARTER;

function durationOf(element: XmlElement, { scale }: PartState): number {
  return Math.min(LONGEST, Math.max(0, (childNumber(element, 'duration') ?? 0) * scale));
}

function readAttributes(element: XmlElement, { number }: OpenMeasure, state: PartState): void {
  const divisions = childNumber(element, 'divisions');
  if (divisions !== undefined && divisions > 0) state.scale = TICKS_PER_QUARTER / divisions;
  const transpose = child(element, 'transpose');
  if (transpose !== undefined) {
    const octaves = childNumber(transpose, 'octave-change') ?? 0;
    state.transpose = Math.round((childNumber(transpose, 'chromatic') ?? 0) + 12 * octaves);
  }
  if (number > 1 && child(element, 'time') !== undefined) {
    state.warnings.add('metre-change', { bar: number });
  }
  if (number > 1 && child(element, 'key') !== undefined) {
    state.warnings.add('key-change', { bar: number });
  }
}

function readNote(element: XmlElement, open: OpenMeasure, state: PartState): void {
  const where = { bar: open.number };
  warnOfNotations(element, where.bar, state.warnings);
  if (child(element, 'grace') !== undefined) {
    readGrace(element, open, state);
    return;
  }
  const duration = durationOf(element, state);
  const isInChord = child(element, 'chord') !== undefined;
  const start = isInChord ? open.lastStart : open.at;
  const pitch = pitchOf(element, state, where.bar);
  const isCue = child(element, 'cue') !== undefined;
  if (pitch !== undefined && isCue) state.warnings.add('cue-notes', where);
  else if (pitch !== undefined) {
    if (duration > 0) addNote(open, element, { offset: start, duration, ...pitch });
    else state.warnings.add('note-empty', where);
  }
  if (isInChord) return;
  open.lastStart = open.at;
  move(open, duration);
}

function readGrace(element: XmlElement, open: OpenMeasure, state: PartState): void {
  const where = { bar: open.number };
  const grace = pitchOf(element, state, open.number);
  if (grace === undefined) return;
  if (child(element, 'cue') !== undefined) {
    state.warnings.add('cue-notes', where);
    return;
  }
  const staff = childNumber(element, 'staff') ?? 1;
  const groups = open.graces.get(staff) ?? [];
  open.graces.set(staff, groups);
  const last = groups.at(-1);
  const isInChord = child(element, 'chord') !== undefined && last?.offset === open.at;
  if (isInChord) last.notes.push(grace);
  else groups.push({ offset: open.at, notes: [grace] });
}

function addNote(
  { notes }: OpenMeasure,
  element: XmlElement,
  note: Omit<MeasureNote, 'tied'>,
): void {
  const staff = childNumber(element, 'staff') ?? 1;
  const ties = childrenOf(element, 'tie');
  const tied = ties.some(({ attributes }) => attributes.get('type') === 'start');
  const before = notes.get(staff);
  if (before === undefined) notes.set(staff, [{ ...note, tied }]);
  else before.push({ ...note, tied });
}

function readHarmony(element: XmlElement, open: OpenMeasure, state: PartState): void {
  open.chords.push({ offset: placeOf(element, open, state), text: symbolOfHarmony(element) });
}

function readDirection(element: XmlElement, open: OpenMeasure, state: PartState): void {
  const words = wordsOfDirection(element);
  const sounds = childrenOf(element, 'sound');
  const offset = placeOf(element, open, state);
  const jumps = sounds.flatMap((sound) => jumpsOfSound(sound, offset, words));
  readSounding(element, offset, open, state);
  open.jumps.push(...jumps);
  if (jumps.length === 0 && sayJump(words)) {
    state.warnings.add('repeat-jump', { bar: open.number }, words);
  }
}

function readSound(element: XmlElement, open: OpenMeasure, state: PartState): void {
  const offset = placeOf(element, open, state);
  open.jumps.push(...jumpsOfSound(element, offset));
  readSounding(element, offset, open, state);
}

/** How fast and how loud it goes on. */
function readSounding(
  element: XmlElement,
  offset: number,
  { tempos }: OpenMeasure,
  state: PartState,
): void {
  const quarters = quartersOf(element);
  if (quarters !== undefined) tempos.push({ offset, quarters });
  state.loudness = loudnessOf(element) ?? state.loudness;
}

/** Ticks from the beginning of the measure to where an element stands. */
function placeOf(element: XmlElement, { at }: OpenMeasure, { scale }: PartState): number {
  return Math.max(0, at + (childNumber(element, 'offset') ?? 0) * scale);
}
