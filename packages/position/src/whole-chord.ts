import { BREATHS, type Breath, type Harp, type Hole } from '@reedplate/layout';
import { type Chord, type PitchClass, toPitchClass, triadOf } from '@reedplate/pitch';

/** Neighbouring holes on one breath that sound a chord and nothing else. */
export interface WholeChord {
  readonly breath: Breath;
  /** First and last hole. */
  readonly from: Hole;
  readonly to: Hole;
}

/**
 * The longest run of neighbouring holes whose unbent notes are all tones of a chord and among
 * them its root, third and fifth; the lower run on a tie, blow before draw. A seventh may be
 * absent. `undefined` where no run that the player has has the triad.
 */
export function wholeChordOn(
  harp: Harp,
  chord: Chord,
  hasNatural: HasNatural = () => true,
): WholeChord | undefined {
  const tones = new Set(chord.tones.map(({ pitchClass }) => pitchClass));
  const needed = new Set(triadOf(chord).map(({ pitchClass }) => pitchClass));
  const isTone = (pitchClass: PitchClass): boolean => tones.has(pitchClass);
  const runs = BREATHS.flatMap((breath) =>
    runsOf(harp, breath, (hole, pitch) => isTone(toPitchClass(pitch)) && hasNatural(hole, breath)),
  );
  let longest: WholeChord | undefined;
  for (const run of runs) {
    if (!soundsAll(harp, run, needed)) continue;
    if (longest === undefined || run.to - run.from > longest.to - longest.from) longest = run;
  }
  return longest;
}

/** Whether the player has the unbent note of a hole. */
type HasNatural = (hole: Hole, breath: Breath) => boolean;

/** Runs of holes whose unbent notes on a breath are all wanted; of one that grows, each length it passes. */
function runsOf(
  harp: Harp,
  breath: Breath,
  isWanted: (hole: Hole, pitch: number) => boolean,
): WholeChord[] {
  const runs: WholeChord[] = [];
  let from: Hole | undefined;
  for (const reeds of harp.holes) {
    if (!isWanted(reeds.hole, reeds[breath])) {
      from = undefined;
      continue;
    }
    from ??= reeds.hole;
    runs.push(Object.freeze({ breath, from, to: reeds.hole }));
  }
  return runs;
}

function soundsAll(harp: Harp, run: WholeChord, needed: ReadonlySet<PitchClass>): boolean {
  const reeds = harp.holes.slice(run.from - 1, run.to);
  const sounded = new Set(reeds.map((hole) => toPitchClass(hole[run.breath])));
  return [...needed].every((pitchClass) => sounded.has(pitchClass));
}
