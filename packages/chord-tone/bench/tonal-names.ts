import { CHORD_ROUGHNESS, type NoteClass, type PlayingStyle } from '@reedplate/chord-tone';
import { Chord, Interval, Note } from 'tonal';

// What a note is over a chord, worked out on note names with tonal: names parsed once and every
// chord kept; at best every pair of both is kept too, from call to call.

/** The song that notes are judged in. */
export interface Song {
  readonly tonic: string;
  readonly style: PlayingStyle;
}

/** A note over a chord. */
export interface Known {
  readonly midi: number;
  /** Spelled by the chord where it is a tone of it, else by the key. */
  readonly name: string;
  /** Degree above the chord's root; null without a chord. */
  readonly degree: string | null;
  /** Its interval in the chord; null where it is none of its tones. */
  readonly interval: string | null;
  /** 1 for a tone of the chord but its extensions, 0 for another note, −1 without a chord. */
  readonly tone: number;
  /** What it is where it does not resolve. */
  readonly resting: NoteClass;
  /** Whether it is a blue note, if only where it resolves. */
  readonly blue: boolean;
}

/** Compares a note with a chord; no symbol is silence. */
export type Compare = (symbol: string, name: string) => Known;

const chords = new Map<string, ReturnType<typeof Chord.get>>();
const midis = new Map<string, number>();

/** A chord of tonal by its symbol, looked up once. */
export function chordOf(symbol: string): ReturnType<typeof Chord.get> {
  let chord = chords.get(symbol);
  if (chord === undefined) {
    chord = Chord.get(symbol);
    if (chord.empty) throw new Error(`no chord: ${symbol}`);
    chords.set(symbol, chord);
  }
  return chord;
}

const tones = new Map<string, readonly number[]>();

/** Pitch classes of a chord but its extensions, found once. */
export function tonesOf(symbol: string): readonly number[] {
  let found = tones.get(symbol);
  if (found === undefined) {
    const { notes, intervals } = chordOf(symbol);
    found = notes
      .filter((_, at) => !isExtension(intervals[at] ?? ''))
      .map((name) => Note.chroma(name) ?? -1);
    tones.set(symbol, found);
  }
  return found;
}

/** The MIDI number of a name, read once. */
export function midiOf(name: string): number {
  let midi = midis.get(name);
  if (midi === undefined) {
    const read = Note.midi(name);
    if (read === null) throw new Error(`no note: ${name}`);
    midi = read;
    midis.set(name, midi);
  }
  return midi;
}

/** Names parsed once and chords kept; each note compared anew. */
export function keepChords(song: Song): Compare {
  return (symbol, name) => compare(symbol, name, song);
}

/** Every comparison kept too. */
export function keepPairs(song: Song): Compare {
  const pairs = new Map<string, Map<string, Known>>();
  return (symbol, name) => {
    let ofChord = pairs.get(symbol);
    if (ofChord === undefined) {
      ofChord = new Map();
      pairs.set(symbol, ofChord);
    }
    let known = ofChord.get(name);
    if (known === undefined) {
      known = compare(symbol, name, song);
      ofChord.set(name, known);
    }
    return known;
  };
}

const DEGREES = ['1', 'b2', '2', 'b3', '3', '4', 'b5', '5', 'b6', '6', 'b7', '7'] as const;
const INTERVALS = ['1P', '2m', '2M', '3m', '3M', '4P', '5d', '5P', '6m', '6M', '7m', '7M'] as const;

function compare(symbol: string, name: string, song: Song): Known {
  const midi = midiOf(name);
  const inKey = semitonesAbove(song.tonic, name);
  const plain = atPitch(nameInKey(inKey, song.tonic), midi);
  if (symbol === '') {
    const silence = { degree: null, interval: null, tone: -1, resting: 'unjudged' } as const;
    return { midi, name: plain, blue: false, ...silence };
  }
  const chord = chordOf(symbol);
  const root = chord.tonic ?? '';
  const above = semitonesAbove(root, name);
  const at = chord.intervals.findIndex((interval) => Interval.semitones(interval) % 12 === above);
  const [tone, interval] = [chord.notes[at], chord.intervals[at]];
  const degree = DEGREES[above] ?? '1';
  const isFlatFifth = song.style !== 'major' && inKey === 6;
  if (tone !== undefined && interval !== undefined) {
    const resting = classOfTone(interval, chord.intervals);
    const spelled = { midi, name: atPitch(tone, midi), degree, interval };
    return { ...spelled, tone: isExtension(interval) ? 0 : 1, resting, blue: isFlatFifth };
  }
  const onRoot = semitonesAbove(song.tonic, root);
  const isBlue = isBlueNote(chord.intervals, onRoot, inKey, song.style);
  const roughness = CHORD_ROUGHNESS[song.style][familyOf(chord.intervals)][degree];
  const foreign = roughness === 0 ? 'colour' : roughness >= 0.75 ? 'clash' : 'unresolved';
  const resting = isBlue ? 'blue' : foreign;
  const spelled = { midi, name: plain, degree, interval: null };
  return { ...spelled, tone: 0, resting, blue: isBlue || isFlatFifth };
}

function semitonesAbove(root: string, name: string): number {
  return ((Note.chroma(name) ?? 0) - (Note.chroma(root) ?? 0) + 12) % 12;
}

/** Double sharps and flats give way to the plain name. */
function nameInKey(above: number, tonic: string): string {
  const strict = Note.transpose(tonic, INTERVALS[above] ?? '1P');
  return strict.length > 2 ? Note.simplify(strict) : strict;
}

function atPitch(name: string, midi: number): string {
  const octave = Math.floor(midi / 12) - 1;
  const near = [octave, octave - 1, octave + 1].map((at) => `${name}${at}`);
  return near.find((other) => Note.midi(other) === midi) ?? name;
}

function isExtension(interval: string): boolean {
  return /^(?:9|1[13])/u.test(interval);
}

const GUIDES = new Set(['3m', '3M', '7d', '7m', '7M']);

function classOfTone(interval: string, intervals: readonly string[]): NoteClass {
  if (interval === '1P') return 'root';
  if (isExtension(interval)) return 'colour';
  const isSixthForSeventh = interval === '6M' && !intervals.some((other) => /^7/u.test(other));
  return GUIDES.has(interval) || isSixthForSeventh ? 'guide-tone' : 'chord-tone';
}

function familyOf(intervals: readonly string[]): keyof (typeof CHORD_ROUGHNESS)['minor'] {
  if (intervals.includes('3M')) return intervals.includes('7m') ? 'dominant' : 'major';
  if (!intervals.includes('3m')) return 'open';
  return intervals.includes('5d') ? 'diminished' : 'minor';
}

function isBlueNote(
  intervals: readonly string[],
  onRoot: number,
  inKey: number,
  style: PlayingStyle,
): boolean {
  if (style === 'major' || (onRoot !== 0 && onRoot !== 7)) return false;
  return inKey === 10 || (inKey === 3 && intervals.includes('3M'));
}
