import { Chord, Note } from 'tonal';

// The same work as targetsOf and as the classes of scoreLine, on note names with tonal, written
// with care: every name is parsed once, every chord and every pair of note and chord kept.

/** A note class as the baseline tells it: chord tones by degree, and whether the rest resolves. */
export interface NamedNote {
  readonly name: string;
  readonly chord: string;
  readonly interval: string | undefined;
  readonly class: 'root' | 'guide-tone' | 'chord-tone' | 'resolved' | 'outside';
}

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

interface KnownChord {
  readonly intervals: readonly string[];
  readonly chromas: readonly (number | undefined)[];
  readonly names: readonly string[];
}

const chords = new Map<string, KnownChord>();
const notes = new Map<string, { readonly chroma: number; readonly midi: number }>();

function knownChord(symbol: string): KnownChord {
  let known = chords.get(symbol);
  if (known === undefined) {
    const { intervals, notes: names, empty } = Chord.get(symbol);
    if (empty) throw new Error(symbol);
    known = { intervals, names, chromas: names.map((name) => Note.chroma(name)) };
    chords.set(symbol, known);
  }
  return known;
}

function knownNote(name: string): { readonly chroma: number; readonly midi: number } {
  let known = notes.get(name);
  if (known === undefined) {
    const { chroma, midi, empty } = Note.get(name);
    if (empty || midi === null) throw new Error(name);
    known = { chroma, midi };
    notes.set(name, known);
  }
  return known;
}

/** A tone of a chord among the soundings of a harp. */
export interface NamedTarget {
  readonly name: string;
  readonly interval: string;
  readonly hole: number;
}

/** The targets of a chord among soundings by name. */
export function namedTargets(
  symbol: string,
  soundings: readonly { readonly name: string; readonly hole: number }[],
): readonly NamedTarget[] {
  const { intervals, chromas, names } = knownChord(symbol);
  const found: NamedTarget[] = [];
  for (const { name, hole } of soundings) {
    const note = knownNote(name);
    const at = chromas.indexOf(note.chroma);
    if (at < 0) continue;
    const octave = Math.floor(note.midi / 12) - 1;
    found.push({ name: `${names[at]}${octave}`, interval: intervals[at] ?? '', hole });
  }
  return found;
}

const GUIDE_TONES = new Set(['3M', '3m', '7M', '7m', '7d']);

/** The class of every note of a line over chords. */
export function namedClasses(
  line: readonly NamedTime[],
  spans: readonly NamedSpan[],
): readonly NamedNote[] {
  let at = 0;
  return line.map(({ name, start }, index) => {
    while (at + 1 < spans.length && (spans[at + 1]?.start ?? 0) <= start) at += 1;
    const symbol = spans[at]?.symbol ?? '';
    const { chroma, midi } = knownNote(name);
    const chord = knownChord(symbol);
    const tone = chord.chromas.indexOf(chroma);
    const interval = chord.intervals[tone];
    return {
      name,
      chord: symbol,
      interval,
      class: classOf(interval, midi, line[index + 1], chord),
    };
  });
}

function classOf(
  interval: string | undefined,
  midi: number,
  next: NamedTime | undefined,
  chord: KnownChord,
): NamedNote['class'] {
  if (interval === '1P') return 'root';
  if (interval !== undefined) return GUIDE_TONES.has(interval) ? 'guide-tone' : 'chord-tone';
  if (next === undefined) return 'outside';
  const after = knownNote(next.name);
  const isStep = Math.abs(after.midi - midi) <= 2;
  return isStep && chord.chromas.includes(after.chroma) ? 'resolved' : 'outside';
}
