import {
  type AvailabilityOptions,
  type ChordAvailability,
  type ChordWarning,
  type Clash,
  chordAvailability,
  chordShapes,
  type Gesture,
  type PlayingStyle,
  type ShapeFit,
  styleOfKey,
} from '@reedplate/chord-tone';
import type { Chart } from '@reedplate/form';
import type { Breath, Harp, Hole, TechniqueLevel } from '@reedplate/layout';
import type { Chord, ChordDegree, NoteName, ScaleDegree } from '@reedplate/pitch';
import { formatSounding } from '@reedplate/tab';

/** Where one tone of a chord lies. */
export interface TargetTone {
  readonly degree: ChordDegree;
  readonly note: NoteName;
  /** Ways to sound it, in signs, from the low end; empty where the harp has none. */
  readonly tab: readonly string[];
}

/** Holes that sound a chord whole, played together on one breath. */
export interface TargetShape {
  /** A run of neighbouring holes, a double stop, or a split with the holes between blocked. */
  readonly gesture: Gesture;
  readonly breath: Breath;
  /** The holes that sound, from the low end. */
  readonly holes: readonly Hole[];
  /** Degrees of the chord that are left out: the seventh, say. */
  readonly lacks: readonly ChordDegree[];
  /** Harmless notes besides the chord, as degrees above its root. */
  readonly adds: readonly ScaleDegree[];
}

/** What the harp gives one chord of a bar. */
export interface TargetChord {
  /** Felt beat it begins on, from 1. */
  readonly beat: number;
  readonly numeral: string;
  readonly chord: string;
  readonly tones: readonly TargetTone[];
  readonly whole: readonly TargetShape[];
  readonly warnings: readonly TargetWarning[];
}

/** A plain warning: a stable code, and a sentence for people. */
export interface TargetWarning {
  readonly code: ChordWarning['code'];
  readonly text: string;
}

/** One bar of a chart on a harp; a break has no chord. */
export interface TargetBar {
  readonly bar: number;
  readonly chords: readonly TargetChord[];
}

/** Every way to sound part of a chord with several holes, and how it stands to the chord. */
export interface ChordShapes {
  readonly chord: string;
  readonly shapes: readonly JudgedShape[];
}

/** A shape with how it fits its chord, and what of it clashes. */
export interface JudgedShape extends TargetShape {
  readonly fit: ShapeFit;
  /** Degrees of the chord that sound, each once. */
  readonly tones: readonly ChordDegree[];
  /** Notes that clash in the style asked for, the worst first. */
  readonly clashes: readonly Clash[];
}

/** What `reedplate target --json` prints. */
export interface TargetReport {
  readonly harp: Harp;
  readonly form: string;
  readonly key: Chart['key'];
  readonly bars: readonly TargetBar[];
  /** Each chord of the chart once, in the order in which they come. */
  readonly shapes: readonly ChordShapes[];
}

/** How {@link targetReport} looks. */
export interface TargetReportOptions {
  /** Default `bends`: natural notes and bends. */
  readonly level?: TechniqueLevel;
  /** Default that of the key: `minor` for a minor key, else `traditional`. */
  readonly style?: PlayingStyle;
}

/**
 * For each bar of a chart, where the tones of its chords lie on a harp, which chords can be played
 * whole, and where the harp cannot give the chord.
 *
 */
export function targetReport(
  chart: Chart,
  harp: Harp,
  { level = 'bends', style = styleOfKey(chart.key) }: TargetReportOptions = {},
): TargetReport {
  const described = describer(harp, { level, style });
  const bars = new Map<number, TargetChord[]>();
  for (const { bar, beat, numeral, chord } of chart.spans) {
    const chords = bars.get(bar) ?? [];
    bars.set(bar, chords);
    if (chord === null || numeral === null) continue;
    chords.push({ beat, numeral, chord: chord.symbol, ...described(chord) });
  }
  return {
    harp,
    form: chart.form,
    key: chart.key,
    bars: [...bars].map(([bar, chords]) => ({ bar, chords })),
    shapes: shapesOfChords(chart, harp, style),
  };
}

type Described = Pick<TargetChord, 'tones' | 'whole' | 'warnings'>;

/** Describes what a harp gives a chord, once for each chord: a blues comes back to three. */
function describer(
  harp: Harp,
  options: Required<Omit<AvailabilityOptions, 'known'>>,
): (chord: Chord) => Described {
  const known = new Map<string, Described>();
  return (chord) => {
    const found =
      known.get(chord.symbol) ??
      describeAvailability(chordAvailability(chord, harp, options), options.level);
    known.set(chord.symbol, found);
    return found;
  };
}

function shapesOfChords({ spans }: Chart, harp: Harp, style: PlayingStyle): readonly ChordShapes[] {
  const chords = new Map(
    spans.flatMap(({ chord }) => (chord === null ? [] : [[chord.symbol, chord]])),
  );
  return [...chords].map(([symbol, chord]) => ({
    chord: symbol,
    shapes: chordShapes(chord, harp, { style }).map(
      ({ gesture, breath, holes, fit, lacks, adds, clashes }) => ({
        gesture,
        breath,
        holes,
        fit,
        tones: chord.tones.map(({ degree }) => degree).filter((degree) => !lacks.includes(degree)),
        lacks,
        adds,
        clashes,
      }),
    ),
  }));
}

function describeAvailability(
  { chord, targets, whole, warnings }: ChordAvailability,
  level: TechniqueLevel,
): Described {
  return {
    tones: chord.tones.map(({ degree, name }) => ({
      degree,
      note: name,
      tab: targets
        .filter((target) => target.degree === degree)
        .map(({ sounding }) => formatSounding(sounding)),
    })),
    whole: whole.map(({ gesture, breath, holes, lacks, adds }) => ({
      gesture,
      breath,
      holes,
      lacks,
      adds,
    })),
    warnings: warnings.map((warning) => ({
      code: warning.code,
      text: sayWarning(chord.symbol, warning, level),
    })),
  };
}

/** Why a tone is missing: a harp may well have what the level leaves out. */
const MISSING_AT: Readonly<Record<TechniqueLevel, string>> = {
  natural: 'has no natural note',
  bends: 'has neither a natural note nor a bend',
  overbends: 'is not to be had',
};

function sayWarning(symbol: string, warning: ChordWarning, level: TechniqueLevel): string {
  const named = warning.degrees.join(', ');
  if (warning.code === 'NO_WHOLE_CHORD') return `no ${symbol} chord lies on neighbouring holes`;
  if (warning.code === 'NO_NATURAL_TONE') return `the ${named} of ${symbol} has no natural note`;
  if (warning.code === 'NO_TONE') return `the ${named} of ${symbol} ${MISSING_AT[level]}`;
  return sayContradiction(symbol, warning);
}

function sayContradiction(symbol: string, { shape, clash }: ChordWarning): string {
  const holes = shape?.holes.join('-') ?? '';
  const notes = shape?.tones.map(({ name }) => name).join(' ') ?? '';
  const degrees = shape?.tones.map(({ above }) => above).join(' and ') ?? '';
  const against = clash?.against === undefined ? '' : ` against its ${clash.against}`;
  // Common practice: traditional players use the minor third over V, a major tune does not bear it.
  const style =
    clash?.above === 'b3' ? ': usual in traditional blues, wrong in a bright major tune' : '';
  return `${shape?.breath} ${holes} (${notes}) sounds ${degrees} of ${symbol}${against}${style}`;
}
