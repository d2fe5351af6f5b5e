import { type Harp, type PlayerLike, type Sounding, soundings } from '@reedplate/layout';
import { type Chord, itemAt, toPitchClass } from '@reedplate/pitch';

/** Neighbouring holes on one breath that sound tones of a chord. */
interface Grip {
  readonly soundings: readonly Sounding[];
  readonly hasRoot: boolean;
  /** The middle of its holes. */
  readonly middle: number;
}

/** Chords are struck around holes 2 to 4, where the low ones lie; as many holes as a mouth takes at ease. */
const HOME = 3;
const MOST_HOLES = 3;
const LAST_HOLE = 7;

/**
 * For each chord, by its symbol, one grip: as many neighbouring holes as there are, up to three, with the root rather than
 * without it, and near the grip of the first chord. Undefined where a chord has no unbent tone of the player's on
 * holes 1 to 7.
 */
export function chordGrips(
  chords: readonly Chord[],
  harp: Harp,
  level: PlayerLike,
): ReadonlyMap<string, readonly Sounding[]> | undefined {
  const natural = soundings(harp, { level }).filter(
    ({ technique, hole }) => technique === 'natural' && hole <= LAST_HOLE,
  );
  const chosen = new Map<string, readonly Sounding[]>();
  let home = HOME;
  for (const chord of chords) {
    if (chosen.has(chord.symbol)) continue;
    const grips = gripsOf(chord, natural);
    if (grips.length === 0) return undefined;
    const best = grips.reduce((a, b) => (isBetter(b, a, home) ? b : a));
    if (chosen.size === 0) home = best.middle;
    chosen.set(chord.symbol, best.soundings);
  }
  return chosen;
}

function gripsOf({ tones }: Chord, natural: readonly Sounding[]): readonly Grip[] {
  const classes = new Set<number>(tones.map(({ pitchClass }) => pitchClass));
  const root = itemAt(tones, 0).pitchClass;
  const own = natural.filter(({ pitch }) => classes.has(toPitchClass(pitch)));
  return own.flatMap((lowest) =>
    Array.from({ length: MOST_HOLES }, (_, more) => {
      const grip = own.filter(
        ({ breath, hole }) =>
          breath === lowest.breath && hole >= lowest.hole && hole <= lowest.hole + more,
      );
      return {
        soundings: grip,
        hasRoot: grip.some(({ pitch }) => toPitchClass(pitch) === root),
        middle: lowest.hole + more / 2,
      };
    }).filter(({ soundings: grip }, more) => grip.length === more + 1),
  );
}

function isBetter(a: Grip, b: Grip, home: number): boolean {
  const wider = a.soundings.length - b.soundings.length;
  if (wider !== 0) return wider > 0;
  if (a.hasRoot !== b.hasRoot) return a.hasRoot;
  return Math.abs(a.middle - home) < Math.abs(b.middle - home);
}
