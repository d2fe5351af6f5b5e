import { itemAt, type Mode, TWELVE_KEYS } from '@reedplate/pitch';
import type { BarScores } from './bar-scores.js';
import type { FormTable } from './form-table.js';

/** How much each chord says for its key, by semitones above the tonic; minor chords apart. Design choice, no source. */
const WEIGHTS: Readonly<
  Record<Mode, { readonly major: readonly number[]; readonly minor: readonly number[] }>
> = {
  major: {
    major: [1, 0.1, 0.35, 0.2, 0.2, 0.8, 0, 0.85, 0.2, 0.25, 0.4, 0],
    minor: [0, 0, 0.5, 0, 0.35, 0.2, 0, 0.1, 0, 0.55, 0, 0],
  },
  minor: {
    major: [0.1, 0.1, 0, 0.5, 0, 0.2, 0, 0.6, 0.65, 0, 0.6, 0],
    minor: [1, 0, 0.3, 0, 0, 0.8, 0, 0.5, 0, 0, 0, 0],
  },
};

/** What the first and the last chord say besides, in shares of the whole. */
const AT_THE_ENDS = 0.15;

/** The key that chords of no form are in: its tonic, and whether it is minor. */
export function keyOfChords(
  { freeChords, shares, free }: BarScores,
  { freeKinds }: FormTable,
): { readonly tonic: number; readonly mode: Mode } {
  const isMinor = new Map(freeKinds.map(({ kind, numeral }) => [kind, numeral.startsWith('i')]));
  const least = 0.35 * Math.max(...free);
  const sounding = [...free.keys()].filter((at) => (free[at] as number) >= least);
  const weightOf = (at: number, tonic: number, mode: Mode): number => {
    const chords = itemAt(freeChords, at);
    const of = (kind: number, root: number): number => {
      const row = WEIGHTS[mode][isMinor.get(kind) === true ? 'minor' : 'major'];
      return row[(root - tonic + 12) % 12] as number;
    };
    return chords.reduce((sum, { kind, root }) => sum + of(kind, root) / chords.length, 0);
  };
  const scored = TWELVE_KEYS.flatMap(({ pitchClass: tonic }) =>
    (['major', 'minor'] as const).map((mode) => {
      const within = sounding.reduce(
        (sum, at) => sum + (shares[at] as number) * weightOf(at, tonic, mode),
        0,
      );
      const ends =
        weightOf(itemAt(sounding, 0), tonic, mode) + weightOf(itemAt(sounding, -1), tonic, mode);
      return { tonic, mode, score: within + AT_THE_ENDS * ends };
    }),
  );
  return scored.reduce((best, each) => (each.score > best.score ? each : best));
}
