import { harpName } from '@reedplate/layout';
import type { KeyName } from '@reedplate/pitch';
import { type PositionNumber, planSet, type SetOptions, type SetSong } from '@reedplate/position';

/** A song of a set with its harp. */
export interface SetlistEntry {
  readonly title: string;
  readonly key: KeyName;
  /** As a player calls it: `low F`, `Am natural-minor`. */
  readonly harp: string;
  readonly position: PositionNumber;
  /** How well it suits, 0 to 1. */
  readonly weight: number;
  /** Whether another harp is picked up for it. */
  readonly changes: boolean;
}

/** What `reedplate setlist --json` prints. */
export interface SetlistReport {
  readonly songs: readonly SetlistEntry[];
  /** Times the harp changes. */
  readonly changes: number;
}

/**
 * Harps for a set of songs with the fewest changes. A song without a title is called by its place.
 *
 * @throws ReedplateError as `planSet`
 */
export function setlistReport(songs: readonly SetSong[], options: SetOptions = {}): SetlistReport {
  const { steps, changes } = planSet(songs, options);
  return {
    songs: steps.map(
      ({ index, title = `${index + 1}`, key, pick, changes: changed }): SetlistEntry => {
        return {
          title,
          key,
          harp: harpName(pick.harp),
          position: pick.position,
          weight: Math.round(pick.weight * 1000) / 1000,
          changes: changed,
        };
      },
    ),
    changes,
  };
}
