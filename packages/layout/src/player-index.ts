import type { Player } from './player.js';
import type { Sounding } from './sounding.js';
import type { HoleSoundings, SoundingIndex } from './sounding-index.js';
import { hasSounding } from './to-player.js';

/** What a player has of an index of everything. */
export function onlyOf(player: Player, { all, ofHole, ofPitch }: SoundingIndex): SoundingIndex {
  const has = (sounding: Sounding): boolean =>
    hasSounding(player, sounding) && (player.holdsTwoDraw || !isSharedTwoDraw(sounding, ofPitch));
  const only = <Of extends Sounding>(list: readonly Of[]): readonly Of[] =>
    Object.freeze(list.filter(has));
  return {
    all: only(all),
    ofHole: ofHole.map(({ blow, draw }): HoleSoundings => ({ blow: only(blow), draw: only(draw) })),
    ofPitch: ofPitch.map((alike) => (alike.length === 0 ? alike : only(alike))),
  };
}

/** Whether it is 2 draw unbent, and 3 blow sounds the same. */
function isSharedTwoDraw(
  { hole, breath, technique, pitch }: Sounding,
  ofPitch: SoundingIndex['ofPitch'],
): boolean {
  if (hole !== 2 || breath !== 'draw' || technique !== 'natural') return false;
  return (ofPitch[pitch] ?? []).some(
    (other) => other.hole === 3 && other.breath === 'blow' && other.technique === 'natural',
  );
}
