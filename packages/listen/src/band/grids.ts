import { median } from '../median.js';
import { beatLengths } from './beats/tempo-candidates.js';
import { trackBeats } from './beats/track-beats.js';
import type { Grid } from './form/bar-scores.js';
import type { Onsets } from './front/onsets.js';

/** A grid that the beats of a sound may make, and what its rhythm says for it. */
export interface RhythmGrid extends Grid {
  /** Felt beats a minute. */
  readonly tempo: number;
  /** Which of the beats of a bar the first bar line was laid on. */
  readonly phase: number;
  /** Logarithm of how strong onsets on its beats are, times the root of how many there are: neither few nor weak ones. */
  readonly onBeats: number;
  /** How much more begins on the first beats of bars, and in the bass drum, than on the others. */
  readonly accent: number;
}

/** Beat lengths that are tried. */
const MOST_LENGTHS = 9;

/** Beats of the bars that a blues has: 4/4 and 12/8, 3/4, and 6/8 with two. */
const BEATS_PER_BAR = [4, 3, 2] as const;

/** Every grid that is tried. */
export function gridsOf(onsets: Onsets): readonly RhythmGrid[] {
  const tracked = beatLengths(onsets, MOST_LENGTHS).map((length) => trackBeats(onsets, length));
  return tracked
    .flatMap((onBeat) => [onBeat, offBeats(onBeat)])
    .flatMap((beats) => {
      const tempo = tempoOf(beats);
      const onBeats = Math.log(
        Math.max(0.1, meanAt(onsets, onsets.all, beats)) * Math.sqrt(tempo / 100),
      );
      return BEATS_PER_BAR.flatMap((beatsPerBar) =>
        Array.from({ length: beatsPerBar }, (_, phase): RhythmGrid => {
          const grid = barsFrom(beats, beatsPerBar, phase);
          return { ...grid, tempo, phase, onBeats, accent: accentOf(onsets, grid) };
        }),
      );
    });
}

/** Half a beat later: what is strongest may lie between the beats. */
function offBeats(beats: readonly number[]): readonly number[] {
  const usual = usualBeat(beats);
  const later = beats.map((beat, at) => (beat + (beats[at + 1] ?? beat + usual)) / 2);
  return [(later[0] as number) - usual, ...later];
}

/** Seconds from one beat to the next, on the whole. */
function usualBeat(beats: readonly number[]): number {
  return beats.length > 1
    ? ((beats.at(-1) as number) - (beats[0] as number)) / (beats.length - 1)
    : 1;
}

/** Beats a minute, by the middle one of the beats' distances over a bar or so. */
export function tempoOf(beats: readonly number[]): number {
  const span = Math.min(8, beats.length - 1);
  const over = beats.slice(span).map((beat, at) => (beat - (beats[at] as number)) / span);
  return 60 / (median(over) as number);
}

/** Whole bars of which one begins on a given beat; beats are added before and after. */
function barsFrom(beats: readonly number[], beatsPerBar: number, phase: number): Grid {
  const first = beats[0] as number;
  const last = beats.at(-1) as number;
  const usual = usualBeat(beats);
  const lead = (beatsPerBar - phase) % beatsPerBar;
  const count = beats.length - 1 + lead;
  const tail = (beatsPerBar - (count % beatsPerBar)) % beatsPerBar;
  return {
    beatsPerBar,
    beats: [
      ...Array.from({ length: lead }, (_, at) => first - (lead - at) * usual),
      ...beats,
      ...Array.from({ length: tail }, (_, at) => last + (at + 1) * usual),
    ],
  };
}

function meanAt({ hop }: Onsets, values: Float64Array, seconds: readonly number[]): number {
  let [sum, count] = [0, 0];
  for (const second of seconds) {
    const at = Math.round(second / hop);
    if (at < 1 || at >= values.length - 1) continue;
    sum += Math.max(values[at - 1] as number, values[at] as number, values[at + 1] as number);
    count += 1;
  }
  return count === 0 ? 0 : sum / count;
}

function accentOf(onsets: Onsets, { beats, beatsPerBar }: Grid): number {
  const onFirst = beats.filter((_, at) => at % beatsPerBar === 0);
  const others = beats.filter((_, at) => at % beatsPerBar !== 0);
  return meanAt(onsets, onsets.low, onFirst) - meanAt(onsets, onsets.low, others);
}
