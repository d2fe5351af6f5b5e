import {
  type Breath,
  type HarpLike,
  type Hole,
  type KnownTunings,
  type PlayerLike,
  toHarp,
} from '@reedplate/layout';
import {
  type Chord,
  type ChordDegree,
  type ChordLike,
  degreeAbove,
  itemAt,
  type NoteNameWithOctave,
  type OptionNames,
  requireOneOf,
  requireOptions,
  SCALE_DEGREES,
  type ScaleDegree,
  spellAbove,
  toPitchClass,
  triadOf,
} from '@reedplate/pitch';
import { type Clash, clashOf } from './clash.js';
import { type Gesture, gesturesOf, type SoundedHole } from './gesture.js';
import { spelledPitch } from './spelled-pitch.js';
import { PLAYING_STYLES, type PlayingStyle } from './styles.js';
import { toneByPitchClass } from './target.js';
import { toChord } from './to-chord.js';

/** A hole within a shape, and what it gives the chord. */
export interface ShapeTone {
  readonly hole: Hole;
  readonly pitch: number;
  readonly name: NoteNameWithOctave;
  /** Degree of the chord, or null where the note is none of its tones. */
  readonly degree: ChordDegree | null;
  /** Degree above the chord's root as blues players name it, for any note. */
  readonly above: ScaleDegree;
}

/**
 * How a shape stands to a chord: `complete`, all its tones and no other; `partial`, only its tones
 * but not all; `with-added-tones`, with harmless other notes; `clashing`, with a note that clashes.
 */
export type Completeness = 'complete' | 'partial' | 'with-added-tones' | 'clashing';

/** Holes played together on one breath, judged against a chord. */
export interface ChordShape {
  readonly gesture: Gesture;
  readonly breath: Breath;
  /** The holes that sound, from the low end. */
  readonly holes: readonly Hole[];
  readonly tones: readonly ShapeTone[];
  readonly completeness: Completeness;
  /** Degrees of the chord that do not sound, in the chord's order. */
  readonly lacks: readonly ChordDegree[];
  /** Harmless notes outside the chord. */
  readonly adds: readonly ScaleDegree[];
  /** Notes that clash, the worst first. */
  readonly clashes: readonly Clash[];
  /** Whether the chord's root, third and fifth all sound: the chord is there for the ear. */
  readonly triad: boolean;
}

/** How {@link chordShapes} judges. */
export interface ShapeOptions {
  /**
   * Default `blues`: a chord by itself belongs to no key. For a chord of a song pass the
   * style of its key: {@link styleOfKey}.
   */
  readonly style?: PlayingStyle;
  /** Who plays, by a level or as a `Player`: which notes and splits they have; default `bends`. */
  readonly level?: PlayerLike;
  /** Tunings of one's own, for a harp that is named in one. */
  readonly known?: KnownTunings;
}

const SHAPE_OPTIONS: OptionNames<ShapeOptions> = { style: true, level: true, known: true };

/**
 * Every run of three to five neighbouring holes, double stop and tongue-blocked split on unbent
 * notes of which at least half are tones of the chord, judged against it.
 *
 * In order of breath (blow first), gesture (run, double stop, split), lowest hole and size.
 *
 * @param chord a chord, or its symbol
 * @throws ReedplateError `CHORD_UNKNOWN`, or `OPTION_UNKNOWN` for the style
 * @example
 * ```ts
 * import { chordShapes } from '@reedplate/chord-tone';
 *
 * const whole = chordShapes('G7', 'C').filter(({ completeness }) => completeness === 'complete');
 * whole.map(({ breath, holes }) => `${breath} ${holes.join('')}`); // => ['draw 12345', 'draw 2345']
 * chordShapes('H7', 'C'); // throws CHORD_UNKNOWN
 * ```
 */
export function chordShapes(
  chord: ChordLike,
  given: HarpLike,
  options: ShapeOptions = {},
): readonly ChordShape[] {
  const {
    style = 'blues',
    level = 'bends',
    known,
  } = requireOptions(options, SHAPE_OPTIONS, 'chordShapes');
  const harp = toHarp(given, known);
  requireOneOf(style, PLAYING_STYLES, { what: 'a style' });
  const parsed = toChord(chord);
  const toneOf = shapeTones(parsed);
  const ground = groundOf(parsed, style);
  const shapes: ChordShape[] = [];
  for (const { gesture, breath, holes } of gesturesOf(harp, level)) {
    const tones = holes.map(toneOf);
    const inChord = tones.filter(({ degree }) => degree !== null).length;
    if (inChord * 2 < tones.length) continue;
    shapes.push(
      Object.freeze({
        gesture,
        breath,
        holes: Object.freeze(holes.map(({ hole }) => hole)),
        ...judgeTones(tones, ground),
      }),
    );
  }
  return Object.freeze(shapes);
}

/** What each hole gives a chord; a hole that comes again, in another shape, is the same tone. */
function shapeTones(chord: Chord): (sounded: SoundedHole) => ShapeTone {
  const toneAt = toneByPitchClass(chord);
  const root = itemAt(chord.tones, 0).pitchClass;
  const found = new Map<string, ShapeTone>();
  return ({ hole, pitch }) => {
    const place = `${hole} ${pitch}`;
    const before = found.get(place);
    if (before !== undefined) return before;
    const pitchClass = toPitchClass(pitch);
    const tone = toneAt[pitchClass];
    const made = Object.freeze({
      hole,
      pitch,
      name: spelledPitch(pitch, tone?.name ?? spellAbove(pitchClass, chord.root)),
      degree: tone?.degree ?? null,
      above: degreeAbove(pitchClass, root),
    });
    found.set(place, made);
    return made;
  };
}

/** What shapes of a chord are judged by. */
interface Ground {
  readonly degrees: readonly ChordDegree[];
  /** Degrees of its triad; none where it has no third (suspended, a power chord). */
  readonly triad: readonly ChordDegree[];
  readonly clash: (above: ScaleDegree) => Clash | undefined;
}

function groundOf(chord: Chord, style: PlayingStyle): Ground {
  const triad = triadOf(chord).map(({ degree }) => degree);
  const clashes = new Map(SCALE_DEGREES.map((above) => [above, clashOf(above, chord, style)]));
  return {
    degrees: chord.tones.map(({ degree }) => degree),
    triad: triad.length < 3 ? [] : triad,
    clash: (above) => clashes.get(above),
  };
}

type Judgement = Omit<ChordShape, 'gesture' | 'breath' | 'holes'>;

function judgeTones(tones: readonly ShapeTone[], { degrees, triad, clash }: Ground): Judgement {
  const sounding = new Set(tones.map(({ degree }) => degree));
  const lacks = degrees.filter((degree) => !sounding.has(degree));
  const foreign = new Set(tones.filter(({ degree }) => degree === null).map(({ above }) => above));
  const clashes = [...foreign]
    .map(clash)
    .filter((found) => found !== undefined)
    .sort((a, b) => b.roughness - a.roughness);
  const adds = [...foreign].filter((above) => clash(above) === undefined);
  return {
    tones: Object.freeze(tones),
    completeness: fitOf({ lacks, adds, clashes }),
    lacks: Object.freeze(lacks),
    adds: Object.freeze(adds),
    clashes: Object.freeze(clashes),
    triad: triad.length > 0 && triad.every((degree) => sounding.has(degree)),
  };
}

function fitOf({
  lacks,
  adds,
  clashes,
}: Pick<ChordShape, 'lacks' | 'adds' | 'clashes'>): Completeness {
  if (clashes.length > 0) return 'clashing';
  if (adds.length > 0) return 'with-added-tones';
  return lacks.length > 0 ? 'partial' : 'complete';
}
