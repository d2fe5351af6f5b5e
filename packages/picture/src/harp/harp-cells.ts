import {
  BREATHS,
  type Breath,
  type Harp,
  type Hole,
  nameOnHarp,
  type Sounding,
  soundingsAt,
  type TechniqueLevel,
} from '@reedplate/layout';
import {
  type Chord,
  type ChordDegree,
  degreeAbove,
  type Key,
  parseNoteName,
  spell,
  toPitchClass,
} from '@reedplate/pitch';

/** What the notes of a harp are called by: their names, or their degrees in the key of the song. */
export type HarpNames = 'notes' | 'degrees';

/** A sounding in its place on the picture of a harp. */
export interface HarpCell {
  readonly hole: Hole;
  readonly breath: Breath;
  /** Rows away from the row of the breath: 0 the natural note, bends and the overbend outwards. */
  readonly rank: number;
  readonly sounding: Sounding;
  /** What it is called. */
  readonly name: string;
  /** What it is in the chord, where it is one of its tones. */
  readonly degree?: ChordDegree;
}

/** What cells are named and marked by. */
export interface CellNaming {
  readonly names: HarpNames;
  readonly key?: Key | undefined;
  readonly chord?: Chord | undefined;
  readonly level: TechniqueLevel;
}

/** Every sounding of a harp, hole by hole, blow before draw. */
export function cellsOf(harp: Harp, naming: CellNaming): readonly HarpCell[] {
  return harp.holes.flatMap(({ hole }) =>
    BREATHS.flatMap((breath) =>
      soundingsAt(harp, hole, breath, { level: naming.level }).map((sounding, rank) => {
        const pitchClass = toPitchClass(sounding.pitch);
        const tone = naming.chord?.tones.find((each) => each.pitchClass === pitchClass);
        const name = tone !== undefined && naming.names === 'notes' ? tone.name : undefined;
        return {
          hole,
          breath,
          rank,
          sounding,
          name: name ?? nameOf(sounding.pitch, harp, naming),
          ...(tone === undefined ? {} : { degree: tone.degree }),
        };
      }),
    ),
  );
}

function nameOf(pitch: number, harp: Harp, { names, key }: CellNaming): string {
  const pitchClass = toPitchClass(pitch);
  if (names === 'degrees') {
    const tonic = key?.pitchClass ?? parseNoteName(harp.firstPosition).pitchClass;
    return degreeAbove(pitchClass, tonic);
  }
  if (key !== undefined) return spell(pitchClass, key);
  return nameOnHarp(harp, pitch).replace(/-?\d{1,2}$/u, '');
}
