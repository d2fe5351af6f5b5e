import type { Harp, SoundingOptions, TechniqueLevel } from '@reedplate/layout';
import type { KeyLike, KeyName, NoteNameWithOctave, ScaleDegree } from '@reedplate/pitch';
import { type PositionNumber, type ScaleFit, scaleMap, scaleRun } from '@reedplate/position';
import { formatSounding } from '@reedplate/tab';

/** A note of a scale on a harp, with its tablature. */
export interface ScaleEntry {
  readonly degree: ScaleDegree;
  readonly note: NoteNameWithOctave;
  /** Every way to sound it in signs, the easiest first; none where it is missing. */
  readonly tabs: readonly string[];
}

/** What `reedplate scale --json` prints. */
export interface ScaleReport {
  readonly harp: Harp;
  readonly key: KeyName;
  readonly position: PositionNumber;
  readonly scale: string;
  /** The scale's notes between the lowest and the highest reed, rising. */
  readonly notes: readonly ScaleEntry[];
  /**
   * Up from the lowest tonic to the highest and down again, in signs; a note that is missing by its name in
   * brackets.
   */
  readonly run: readonly string[];
  readonly levels: Readonly<Record<TechniqueLevel, ScaleFit>>;
}

/**
 * Where a scale lies on a harp, with a run up and down it as tablature.
 *
 * @throws ReedplateError as `scaleMap`
 */
export function scaleReport(
  harp: Harp,
  songKey: KeyLike,
  scale: string,
  options: SoundingOptions = {},
): ScaleReport {
  const { notes, ...map } = scaleMap(harp, songKey, scale, options);
  return {
    harp,
    key: map.key,
    position: map.position,
    scale: map.scale,
    notes: notes.map(({ degree, name, soundings }) => ({
      degree,
      note: name,
      tabs: soundings.map((sounding) => formatSounding(sounding)),
    })),
    run: scaleRun(harp, songKey, scale, options).map(({ sounding, name }) =>
      sounding === null ? `(${name})` : formatSounding(sounding),
    ),
    levels: map.levels,
  };
}
