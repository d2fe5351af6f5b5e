import { type Harp, type PlayerLike, type Sounding, soundings } from '@reedplate/layout';
import { itemAt, toPitchClass } from '@reedplate/pitch';
import type { LaidNote } from './lay-phrase.js';
import type { PhraseChange } from './placed-phrase.js';

/** What a player can sound on a harp, made ready for many questions. */
export interface Reach {
  /** Pitches, rising. */
  readonly pitches: readonly number[];
  readonly has: ReadonlySet<number>;
  /** What the harp has with every technique. */
  readonly atAll: ReadonlySet<number>;
  /** Unbent notes of the player, from which chords are made. */
  readonly natural: readonly Sounding[];
}

/** What a player can sound on a harp. */
export function reachOf(harp: Harp, level: PlayerLike, lastHole = 16): Reach {
  const had = soundings(harp, { level }).filter(({ hole }) => hole <= lastHole);
  const pitches = [...new Set(had.map(({ pitch }) => pitch))].sort((a, b) => a - b);
  return {
    pitches,
    has: new Set(pitches),
    atAll: new Set(soundings(harp, { level: 'overbends' }).map(({ pitch }) => pitch)),
    natural: had.filter(({ technique }) => technique === 'natural'),
  };
}

/** A phrase at one octave, with what is played instead of what is not to be had. */
export interface Variant {
  /** The pitch of each note; null where it is left out of a chord. */
  readonly pitches: readonly (number | null)[];
  readonly changes: readonly Omit<PhraseChange, 'degree'>[];
  /** Semitones that its notes were moved, a note left out counting an octave. */
  readonly moved: number;
}

/**
 * The nearest variant at the pitch of a tonic: a chord tone that is not to be had becomes the nearest
 * tone of its chord, another note the nearest tone of the chord or of the phrase. Undefined where a
 * chord has no tone on the harp.
 */
export function nearestVariant(
  notes: readonly LaidNote[],
  tonic: number,
  reach: Reach,
): Variant | undefined {
  const classes = new Set(notes.map(({ above }) => toPitchClass(above + tonic)));
  const single = notes.map((note) => nearestPitch(note, tonic, reach, classes));
  if (single.includes(undefined)) return undefined;
  const pitches = withGrips(notes, single as number[], reach);
  const changes = notes.flatMap((note, index) =>
    changeOf(note, pitches[index] ?? null, tonic, reach),
  );
  const moved = changes.reduce(
    (sum, { wanted, played }) => sum + (played === null ? 12 : Math.abs(played - wanted)),
    0,
  );
  return { pitches, changes, moved };
}

function nearestPitch(
  { above, chord, isChordTone }: LaidNote,
  tonic: number,
  { has, pitches }: Reach,
  ofPhrase: ReadonlySet<number>,
): number | undefined {
  const wanted = tonic + above;
  if (has.has(wanted)) return wanted;
  const tones = new Set<number>(chord?.tones.map(({ pitchClass }) => pitchClass));
  const allowed = (pitch: number): boolean => {
    const at = toPitchClass(pitch);
    return tones.has(at) || (!isChordTone && ofPhrase.has(at));
  };
  return pitches
    .filter(allowed)
    .reduce<number | undefined>(
      (best, pitch) =>
        best === undefined || Math.abs(pitch - wanted) < Math.abs(best - wanted) ? pitch : best,
      undefined,
    );
}

/** Notes that begin together keep as many of themselves as lie on one breath, the highest first. */
function withGrips(
  notes: readonly LaidNote[],
  single: readonly number[],
  reach: Reach,
): readonly (number | null)[] {
  const kept: (number | null)[] = [...single];
  for (let first = 0, next = 0; first < notes.length; first = next) {
    while (notes[next]?.start === notes[first]?.start && next < notes.length) next += 1;
    if (next - first === 1) continue;
    const grip = new Set(largestGrip(single.slice(first, next), reach.natural));
    for (let at = first; at < next; at += 1) {
      const pitch = itemAt(single, at);
      // A pitch that two notes come to is played once.
      if (!grip.delete(pitch)) kept[at] = null;
    }
  }
  return kept;
}

const WIDEST_MOUTH = 5;

/** The most of some pitches that unbent notes sound on one breath within a mouth; at least the highest. */
function largestGrip(pitches: readonly number[], natural: readonly Sounding[]): readonly number[] {
  const wanted = [...new Set(pitches)].sort((a, b) => b - a);
  let best: readonly number[] = wanted.slice(0, 1);
  for (const breath of ['blow', 'draw'] as const) {
    const row = natural.filter((each) => each.breath === breath && wanted.includes(each.pitch));
    for (const { hole: low } of row) {
      const within = row.filter(({ hole }) => hole >= low && hole < low + WIDEST_MOUTH);
      const held = wanted.filter((pitch) => within.some((each) => each.pitch === pitch));
      if (held.length > best.length) best = held;
    }
  }
  return best;
}

function changeOf(
  { note, wanted, above }: LaidNote,
  played: number | null,
  tonic: number,
  { has, atAll }: Reach,
): readonly Omit<PhraseChange, 'degree'>[] {
  const asked = tonic + wanted;
  if (played === asked) return [];
  if (played === tonic + above) return [{ note, wanted: asked, played, why: 'another-tone' }];
  if (played === null) return [{ note, wanted: asked, played, why: 'no-grip' }];
  const isThere = atAll.has(tonic + above) && !has.has(tonic + above);
  return [{ note, wanted: asked, played, why: isThere ? 'not-at-level' : 'not-on-harp' }];
}
