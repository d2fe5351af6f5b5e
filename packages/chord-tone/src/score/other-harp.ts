import type { Chart } from '@reedplate/form';
import type { Harp } from '@reedplate/layout';
import { type KeyName, parseKey, toPitchClass, transposeKey } from '@reedplate/pitch';
import type { Fault } from './faults.js';

/** What a take on the wrong harp sounds like, and the harp that it wants. */
export interface OtherHarp {
  /** The key that the notes fit. */
  readonly fits: KeyName;
  /** The key of the song. */
  readonly key: KeyName;
  /** Key of the harp that it seems to be played on. */
  readonly held: KeyName;
  /** Key of the harp on which the same holes would be right. */
  readonly take: KeyName;
}

/** What names the harp. */
export interface HarpAtHand {
  readonly harp?: Harp | undefined;
  /** Whether the line was played on `harp` for certain, as tab is. */
  readonly playedOnHarp?: boolean | undefined;
}

/** Semitones from the song's tonic up to the harp of its second position. */
const CROSS_HARP = 5;

/** Most fifths from the harp up to a song that it is picked up for: third position. Common practice. */
const MOST_FIFTHS = 2;

/**
 * The harps of a take that lies in another key; null for any other fault. A harp at hand that suits the song
 * is the right one, unless the take was played on it; one that does not is the one that was played. Without
 * a harp it is cross harp, as most blues is (common practice).
 */
export function otherHarpOf(
  fault: Fault | null,
  chart: Pick<Chart, 'key'>,
  { harp, playedOnHarp = false }: HarpAtHand,
): OtherHarp | null {
  if (fault?.code !== 'TAKE_OTHER_HARP') return null;
  const song = parseKey(chart.key);
  const known = harp === undefined ? transposeKey(song.tonic, CROSS_HARP) : parseKey(harp.key);
  const isRight = harp === undefined || (!playedOnHarp && suits(harp, song.pitchClass));
  return Object.freeze({
    fits: transposeKey(song, fault.by).name,
    key: song.name,
    held: isRight ? transposeKey(known, fault.by).name : known.name,
    take: isRight ? known.name : transposeKey(known, -fault.by).name,
  });
}

/** Whether a harp plays a song in first, second or third position. */
function suits({ firstPosition }: Harp, tonic: number): boolean {
  const fifths = toPitchClass((tonic - parseKey(firstPosition).pitchClass) * 7);
  return fifths <= MOST_FIFTHS;
}
