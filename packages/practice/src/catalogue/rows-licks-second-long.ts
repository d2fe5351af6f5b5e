import type { PhraseGroup } from './phrase-row.js';

/** Licks of two and four bars over I in second position. */
export const ROWS_LICKS_SECOND_LONG: PhraseGroup = {
  position: 2,
  rows: [
    {
      id: 'over-the-hill',
      kind: 'lick',
      grade: 2,
      trains: 'two bars in one arch',
      harmony: '| I7 | I7 |',
      tab: '-2:1/2 -3:1/2 -4:1/2 +5:1/2 -5:1/2 +5:1/2 -4 | -3:1/2 -4:1/2 -2:2 r',
    },
    {
      id: 'iron-gate',
      kind: 'lick',
      grade: 3,
      trains: 'the same figure with two beginnings',
      harmony: '| I7 | I7 |',
      tab: "-4:1/2 -4':1/2 +4:1/2 -3:1/2 -2 r | -3:1/2 -4:1/2 -4':1/2 +4:1/2 -2:2",
    },
    {
      id: 'heron',
      kind: 'lick',
      grade: 2,
      trains: 'two long notes, then a run home',
      harmony: '| I7 | I7 |',
      tab: '+6:3/2 -5:1/2 -4:2 | -4:1/2 +5:1/2 -4:1/2 -3:1/2 -2:2',
    },
    {
      id: 'long-lane',
      kind: 'lick',
      grade: 2,
      trains: 'four bars that climb once',
      harmony: '| I7 | I7 | I7 | I7 |',
      tab: '-2 -3 -4:2 | -4:1/2 +5:1/2 -4 r:2 | +6 -5 -4:2 | -3:1/2 -4:1/2 -2:2 r',
    },
    {
      id: 'night-bus',
      kind: 'lick',
      grade: 4,
      trains: 'four bars that say one thing twice',
      harmony: '| I7 | I7 | I7 | I7 |',
      tab: "-4:1/2 -4':1/2 +4:1/2 -3':1/2 -2:2 | r:2 -2'':1/2 -2:1/2 r | -4:1/2 -4':1/2 +4:1/2 -3':1/2 -2:2 | r:2 -3':1/2 -3:1/2 -2",
    },
  ],
};
