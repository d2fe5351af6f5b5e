import type { Chart } from '@reedplate/form';
import type { Harp } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import {
  type ChordDegree,
  type NoteNameWithOctave,
  noteNameWithOctave,
  parseKey,
} from '@reedplate/pitch';
import { type PracticeKind, type PracticeOptions, practiceLine } from '@reedplate/practice';
import { formatTab, markOf } from '@reedplate/tab';

/** One move of a practice line: what to play when the chord comes. */
export interface PracticeMove {
  readonly bar: number;
  /** Felt beat, from 1. */
  readonly beat: number;
  readonly chord: string;
  readonly numeral: string | null;
  /** In signs; a chord in brackets. */
  readonly tab: string;
  /** From the low end, spelled in the key of the song. */
  readonly notes: readonly NoteNameWithOctave[];
  readonly degrees: readonly ChordDegree[];
}

/** What `reedplate practice --json` prints. */
export interface PracticeReport {
  readonly kind: PracticeKind;
  readonly form: string;
  readonly key: Chart['key'];
  readonly harp: Harp;
  readonly moves: readonly PracticeMove[];
  /** The same as timed notes: `reedplate score` reads it. */
  readonly line: Line;
  /** What to mind while playing. */
  readonly cautions: readonly string[];
}

/** Common practice; whoever has trouble with breath or heart asks a doctor, not us. */
export const PRACTICE_CAUTIONS: readonly string[] = Object.freeze([
  'Play softly and rest between choruses; stop if you feel dizzy from long blows or draws.',
]);

/**
 * A line to practise over a chart: one move a chord, held until the next.
 *
 * @throws ReedplateError `SOUNDING_IMPOSSIBLE` where the harp has no tone of a chord
 */
export function practiceReport(
  chart: Chart,
  harp: Harp,
  options: PracticeOptions = {},
): PracticeReport {
  const { kind, steps, line } = practiceLine(chart, harp, options);
  const key = parseKey(chart.key);
  return {
    kind,
    form: chart.form,
    key: chart.key,
    harp,
    moves: steps.map(({ bar, beat, chord, numeral, soundings, degrees }) => ({
      bar,
      beat,
      chord: chord.symbol,
      numeral,
      tab: formatTab([soundings.map(markOf)]),
      notes: soundings.map(({ pitch }) => noteNameWithOctave(pitch, { key })),
      degrees,
    })),
    line,
    cautions: PRACTICE_CAUTIONS,
  };
}
