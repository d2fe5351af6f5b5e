import { type Chord, itemAt, toPitchClass } from '@reedplate/pitch';

/** A step of a chord: its root, third, fifth or seventh, of whatever size. */
export type ChordStep = '1' | '3' | '5' | '7';

/** Degrees that stand for a step; the sixth for a seventh that a chord has not, the fourth for a third. */
const DEGREES: Readonly<Record<ChordStep, readonly string[]>> = {
  '1': ['1'],
  '3': ['3', 'b3', '4', '2'],
  '5': ['5', 'b5', '#5'],
  '7': ['b7', '7', 'bb7', '6'],
};

/** Semitones of a step above the root; where the chord lacks it, the flat seventh or the root. */
export function semitonesOfStep({ tones }: Chord, step: ChordStep): number {
  const root = itemAt(tones, 0).pitchClass;
  const tone = DEGREES[step]
    .map((degree) => tones.find((each) => each.degree === degree))
    .find((each) => each !== undefined);
  if (tone !== undefined) return toPitchClass(tone.pitchClass - root);
  return step === '7' ? 10 : 0;
}
