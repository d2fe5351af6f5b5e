import { PLAYERS, type Player, TECHNIQUE_LEVELS } from '@reedplate/layout';
import { songKeyOf } from '@reedplate/position';
import { phraseChart } from '../phrase/harmony.js';
import type { Phrase } from '../phrase/phrase.js';
import { placePhrase } from '../phrase/place-phrase.js';

/**
 * Whether a player has a phrase as it is written: on a standard harp in its position, over its own chords,
 * with no note changed. A level has what its word says, which every phrase carries.
 */
export function playableBy(player: Player): (phrase: Phrase) => boolean {
  const most = TECHNIQUE_LEVELS.findIndex((level) => PLAYERS[level] === player);
  if (most >= 0) return ({ level }) => TECHNIQUE_LEVELS.indexOf(level) <= most;
  return (phrase) => {
    const chart = phraseChart(phrase, songKeyOf('C', phrase.position));
    const placed = placePhrase(phrase, { chart, harp: 'C', level: player });
    return placed.playable && placed.changes.length === 0;
  };
}
