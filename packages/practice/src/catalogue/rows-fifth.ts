import type { PhraseGroup } from './phrase-row.js';

/** Fifth position: minor, around 2 and 5 blow. */
export const ROWS_FIFTH: PhraseGroup = {
  position: 5,
  harmony: '| i7 |',
  rows: [
    {
      id: 'root-cellar',
      kind: 'lick',
      grade: 2,
      trains: '1 b3 5 at the bottom',
      tab: '+2 -2 -3:2',
    },
    {
      id: 'flint',
      kind: 'lick',
      grade: 2,
      trains: '1 b7 5 b3 1 downwards',
      tab: '+5:1/2 -4:1/2 -3:1/2 -2:1/2 +2:2',
    },
    {
      id: 'slate',
      kind: 'lick',
      grade: 4,
      trains: '5 b5 4 b3 1 on two holes',
      tab: "-3:1/2 -3':1/2 -3'':1/2 -2:1/2 +2:2",
    },
    {
      id: 'birch',
      kind: 'lick',
      grade: 1,
      trains: '1 b3 4 b3 1',
      tab: '+5:1/2 +6:1/2 -6:1/2 +6:1/2 +5:2',
    },
    {
      id: 'birch-high',
      kind: 'lick',
      grade: 2,
      trains: 'from the upper root down',
      tab: '+8:1/2 -8:1/2 -7:1/2 -6:1/2 +6 +5',
    },
    {
      id: 'fifth-slow',
      kind: 'lick',
      grade: 1,
      trains: 'slow: long and short',
      metre: '12/8',
      feel: 'slow-12/8',
      tab: '+5:2/3 +6:1/3 -6:2/3 +6:1/3 +5:2',
    },
    {
      id: 'fifth-four',
      kind: 'fill',
      grade: 2,
      trains: 'tones of iv',
      harmony: '| iv7 |',
      tab: 'r:2 +5:1/2 +6:1/2 -6',
    },
    {
      id: 'fifth-riff',
      kind: 'riff',
      grade: 1,
      trains: '1 b3 1 b7, counted from the chord',
      from: 'chord',
      tab: '+5:1/2 +6:1/2 +5:1/2 -4:1/2 +5 r',
    },
    {
      id: 'fifth-arch',
      kind: 'lick',
      grade: 2,
      trains: 'two bars in one arch',
      harmony: '| i7 | i7 |',
      tab: '+2:1/2 -2:1/2 -3:1/2 -4:1/2 +5:2 | -4:1/2 -3:1/2 -2:1/2 +2:1/2 +2:2',
    },
  ],
};
