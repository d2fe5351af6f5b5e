import { Chord, Interval, Note } from 'tonal';

// The same work as targetsOf and as the notes of scoreLine, on note names with tonal, written with
// care: every name is parsed once and every chord kept; at best every pair of both is kept too.

/** A note by name, timed in ticks. */
export interface NamedTime {
  readonly name: string;
  readonly start: number;
  readonly duration: number;
}

/** A chord by symbol, timed in ticks. */
export interface NamedSpan {
  readonly symbol: string;
  readonly start: number;
  readonly end: number;
}

/** What a note is over a chord: spelled, with its interval above the root and its class. */
export interface NamedNote extends NamedTime {
  readonly bar: number;
  readonly beat: number;
  readonly chord: string;
  readonly interval: string;
  readonly class: 'root' | 'guide-tone' | 'chord-tone' | 'resolved' | 'outside';
}

/** A tone of a chord among the soundings of a harp. */
export interface NamedTarget {
  readonly name: string;
  readonly interval: string;
  readonly hole: number;
}

/** A note over a chord. */
export interface Known {
  readonly name: string;
  readonly interval: string;
  readonly isTone: boolean;
}

const chords = new Map<string, ReturnType<typeof Chord.get>>();
const midis = new Map<string, number>();
const pairs = new Map<string, Map<string, Known>>();

function chordOf(symbol: string): ReturnType<typeof Chord.get> {
  let chord = chords.get(symbol);
  if (chord === undefined) {
    chord = Chord.get(symbol);
    if (chord.empty) throw new Error(symbol);
    chords.set(symbol, chord);
  }
  return chord;
}

function midiOf(name: string): number {
  let midi = midis.get(name);
  if (midi === undefined) {
    const read = Note.midi(name);
    if (read === null) throw new Error(name);
    midi = read;
    midis.set(name, midi);
  }
  return midi;
}

/** How a note is compared with a chord. */
export type Compare = (symbol: string, name: string) => Known;

/** Names parsed once and chords kept; each note compared anew. */
export const KEEP_CHORDS: Compare = compare;

/** Every comparison kept too. */
export const KEEP_PAIRS: Compare = pairOf;

function pairOf(symbol: string, name: string): Known {
  let ofChord = pairs.get(symbol);
  if (ofChord === undefined) {
    ofChord = new Map();
    pairs.set(symbol, ofChord);
  }
  let known = ofChord.get(name);
  if (known === undefined) {
    known = compare(symbol, name);
    ofChord.set(name, known);
  }
  return known;
}

/** Where a note is a tone of a chord it takes the chord's spelling. */
function compare(symbol: string, name: string): Known {
  const chord = chordOf(symbol);
  const at = chord.notes.findIndex((tone) => Note.chroma(tone) === Note.chroma(name));
  const tone = chord.notes[at];
  if (tone === undefined) {
    const above = Interval.distance(chord.tonic ?? '', Note.pitchClass(name));
    return { name, interval: above, isTone: false };
  }
  const near = [-1, 0, 1].map((octave) => `${tone}${(Note.octave(name) ?? 0) + octave}`);
  const spelled = near.find((other) => Note.midi(other) === midiOf(name)) ?? name;
  return { name: spelled, interval: chord.intervals[at] ?? '', isTone: true };
}

/** The targets of a chord among soundings by name. */
export function namedTargets(
  symbol: string,
  soundings: readonly { readonly name: string; readonly hole: number }[],
  known: Compare,
): readonly NamedTarget[] {
  const found: NamedTarget[] = [];
  for (const { name, hole } of soundings) {
    const tone = known(symbol, name);
    if (!tone.isTone) continue;
    found.push(Object.freeze({ name: tone.name, interval: tone.interval, hole }));
  }
  return Object.freeze(found);
}

const GUIDE_TONES = new Set(['3M', '3m', '7M', '7m', '7d']);
const BEAT = 960;
const BAR = 4 * BEAT;

/** Every note of a line over its chord. */
export function namedNotes(
  line: readonly NamedTime[],
  spans: readonly NamedSpan[],
  known: Compare,
): readonly NamedNote[] {
  let at = 0;
  const notes = line.map((note, index) => {
    const { start, duration } = note;
    while (at + 1 < spans.length && (spans[at + 1]?.start ?? 0) <= start) at += 1;
    const chord = spans[at]?.symbol ?? '';
    const { name, interval, isTone } = known(chord, note.name);
    const next = line[index + 1];
    const bar = Math.floor(start / BAR) + 1;
    return Object.freeze({
      name,
      start,
      duration,
      bar,
      beat: (start % BAR) / BEAT + 1,
      chord,
      interval,
      class: isTone
        ? classOfTone(interval)
        : classOfOther(note, next, (other) => known(chord, other)),
    });
  });
  return Object.freeze(notes);
}

function classOfTone(interval: string): NamedNote['class'] {
  if (interval === '1P') return 'root';
  return GUIDE_TONES.has(interval) ? 'guide-tone' : 'chord-tone';
}

function classOfOther(
  note: NamedTime,
  next: NamedTime | undefined,
  known: (name: string) => Known,
): NamedNote['class'] {
  if (next === undefined || next.start - note.start > BEAT) return 'outside';
  const isStep = Math.abs(midiOf(next.name) - midiOf(note.name)) <= 2;
  return isStep && known(next.name).isTone ? 'resolved' : 'outside';
}
