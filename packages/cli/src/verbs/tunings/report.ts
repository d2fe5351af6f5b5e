import { makeHarp, reedsOf, TUNINGS, type Tuning } from '@reedplate/layout';
import type { KeyName, NoteNameWithOctave } from '@reedplate/pitch';

/** A tuning told with its reeds by name. */
export interface TuningEntry {
  readonly id: string;
  readonly name: string;
  readonly use: string;
  readonly source: string;
  /** Key of the harp whose reeds are named. */
  readonly label: KeyName;
  /** Position whose key the label names. */
  readonly labelPosition: 1 | 2;
  readonly holes: number;
  /** From hole 1 up. */
  readonly blow: readonly NoteNameWithOctave[];
  readonly draw: readonly NoteNameWithOctave[];
}

/** What `reedplate tunings --json` prints. */
export interface TuningsReport {
  readonly tunings: readonly TuningEntry[];
}

/**
 * The tunings of the catalogue, or those given, with their reeds by name.
 *
 */
export function tuningsReport(tunings: readonly Tuning[] = TUNINGS): TuningsReport {
  return { tunings: tunings.map(describeTuning) };
}

function describeTuning(tuning: Tuning): TuningEntry {
  const { id, name, use, source, label, labelPosition, holes } = tuning;
  const reeds = reedsOf(makeHarp(label, { tuning }));
  const row = (wanted: 'blow' | 'draw') =>
    reeds.filter(({ breath }) => breath === wanted).map((reed) => reed.name);
  return {
    id,
    name,
    use,
    source,
    label,
    labelPosition,
    holes: holes.length,
    blow: row('blow'),
    draw: row('draw'),
  };
}
