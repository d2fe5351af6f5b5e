import {
  BREATHS,
  type Breath,
  type Harp,
  type HarpLike,
  type Hole,
  nameOnHarp,
  SOUNDING_OPTIONS,
  type Sounding,
  type SoundingOptions,
  soundings,
  type Technique,
  toHarp,
} from '@reedplate/layout';
import {
  type Chord,
  type ChordDegree,
  type ChordLike,
  degreeAbove,
  itemAt,
  type Key,
  type KeyLike,
  type OptionNames,
  requireOptions,
  type ScaleDegree,
  spell,
  toKey,
  toPitchClass,
} from '@reedplate/pitch';
import { toChord } from './to-chord.js';

/** A sounding in its place, and what it is called. */
export interface HarpCell {
  readonly hole: Hole;
  readonly sounding: Sounding;
  /** Its note, by the key of the song where one is given, else as the harp spells it; no octave. */
  readonly name: string;
  /** Its degree in the key of the song; null where no key is given. */
  readonly degree: ScaleDegree | null;
  /** What it is in the chord; null where it is none of its tones, or no chord is given. */
  readonly tone: ChordDegree | null;
}

/** One row of a harp as it is drawn: everything of one breath, technique and depth. */
export interface HarpRow {
  readonly breath: Breath;
  /** `overblow` and `overdraw` have a row each; bends one for each depth. */
  readonly technique: Technique;
  readonly depth: number;
  /** A place for each hole of the harp, from hole 1; null where there is nothing. */
  readonly cells: readonly (HarpCell | null)[];
}

/** What the cells of {@link harpRows} are named by, and which soundings they hold. */
export interface HarpRowsOptions extends SoundingOptions {
  /** Key of the song; default none. */
  readonly key?: KeyLike;
  /** Chord whose tones are marked; default none. */
  readonly chord?: ChordLike;
}

const HARP_ROWS_OPTIONS: OptionNames<HarpRowsOptions> = {
  ...SOUNDING_OPTIONS,
  key: true,
  chord: true,
};

/**
 * The rows of a harp, ready to be drawn from the top: overblows, blow bends, blow, then draw, draw bends and
 * overdraws, so that what lies further from the hole numbers is further from the unbent note.
 *
 * @throws ReedplateError `CHORD_UNKNOWN`, `KEY_UNKNOWN`, `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { harpRows } from '@reedplate/chord-tone';
 *
 * const rows = harpRows('C', { key: 'G', chord: 'C7', level: 'natural' });
 * rows.map(({ breath }) => breath); // => ['blow', 'draw']
 * rows[0]?.cells.slice(0, 3).map((cell) => `${cell?.name} ${cell?.tone}`); // => ['C 1', 'E 3', 'G 5']
 * harpRows('C', { chord: 'what' }); // throws CHORD_UNKNOWN
 * ```
 */
export function harpRows(harpLike: HarpLike, options: HarpRowsOptions = {}): readonly HarpRow[] {
  const { key, chord, ...which } = requireOptions(options, HARP_ROWS_OPTIONS, 'harpRows');
  const harp = toHarp(harpLike, which.known);
  const name = namer(harp, {
    key: key === undefined ? undefined : toKey(key),
    chord: chord === undefined ? undefined : toChord(chord),
  });
  const rows = new Map<string, Sounding[]>();
  for (const sounding of soundings(harp, which)) {
    const row = `${sounding.breath} ${sounding.technique} ${sounding.depth}`;
    rows.set(row, [...(rows.get(row) ?? []), sounding]);
  }
  const laid = [...rows.values()].map((found) => {
    const { breath, technique, depth } = itemAt(found, 0);
    const cells = harp.holes.map(({ hole }) => {
      const sounding = found.find((each) => each.hole === hole);
      return sounding === undefined ? null : Object.freeze({ hole, sounding, ...name(sounding) });
    });
    return Object.freeze({ breath, technique, depth, cells: Object.freeze(cells) });
  });
  return Object.freeze(laid.sort((a, b) => heightOf(b) - heightOf(a)));
}

/** How high above the hole numbers a row is drawn; below them, less than nothing. */
function heightOf({ breath, technique, depth }: Pick<HarpRow, 'breath' | 'technique' | 'depth'>) {
  const isOver = technique === 'overblow' || technique === 'overdraw';
  const away = 1 + depth + (technique === 'valved-bend' ? 0.5 : 0) + (isOver ? 10 : 0);
  return breath === BREATHS[0] ? away : -away;
}

interface Naming {
  readonly key: Key | undefined;
  readonly chord: Chord | undefined;
}

function namer(harp: Harp, { key, chord }: Naming) {
  return ({ pitch }: Sounding): Pick<HarpCell, 'name' | 'degree' | 'tone'> => {
    const pitchClass = toPitchClass(pitch);
    const tone = chord?.tones.find((each) => each.pitchClass === pitchClass);
    const name =
      key === undefined
        ? nameOnHarp(harp, pitch).replace(/-?\d{1,2}$/u, '')
        : spell(pitchClass, key);
    return {
      name: tone?.name ?? name,
      degree: key === undefined ? null : degreeAbove(pitchClass, key.pitchClass),
      tone: tone?.degree ?? null,
    };
  };
}
