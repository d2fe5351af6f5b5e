import type { PhraseGroup } from './phrase-row.js';

/** Slow licks over I in second position, in twelve eighths. */
export const ROWS_LICKS_SECOND_SLOW: PhraseGroup = {
  position: 2,
  metre: '12/8',
  feel: 'slow-12/8',
  rows: [
    {
      id: 'ember',
      kind: 'lick',
      grade: 3,
      trains: 'slow: the flat fifth as the last third of a beat',
      tab: "-4:2/3 -4':1/3 +4:2/3 -3:1/3 -2:2",
    },
    {
      id: 'lantern',
      kind: 'lick',
      grade: 2,
      trains: 'slow: a triplet that walks down',
      tab: '-2:2/3 -3:1/3 -4:2 -4:1/3 +4:1/3 -3:1/3',
    },
    {
      id: 'dusk',
      kind: 'lick',
      grade: 2,
      trains: 'slow: long and short down from the upper root',
      tab: '+6:2/3 -5:1/3 -4:2/3 +5:1/3 -4:2',
    },
    {
      id: 'ash',
      kind: 'lick',
      grade: 4,
      trains: 'slow: flat third into third, flat fifth on the way down',
      tab: "-3':1/3 -3:1/3 -4:1/3 -4':1/3 +4:1/3 -3:1/3 -2:2",
    },
    {
      id: 'willow',
      kind: 'lick',
      grade: 4,
      trains: 'slow: a scooped fifth, flat third before third',
      tab: "-4:1/3;scoop -4':1/3 +4:1/3 -3':2/3 -3:1/3 -2:2",
    },
    {
      id: 'low-tide',
      kind: 'lick',
      grade: 4,
      trains: 'slow: the bottom of the harp',
      tab: "-2:2/3 -2'':1/3 -1:2/3 -2'':1/3 -2:2",
    },
  ],
};
