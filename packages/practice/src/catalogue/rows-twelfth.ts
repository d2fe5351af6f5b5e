import type { PhraseGroup } from './phrase-row.js';

/** Twelfth position: major with a sweet sixth, from 5 draw; 6 draw bent is the flat third. */
export const ROWS_TWELFTH: PhraseGroup = {
  position: 12,
  rows: [
    {
      id: 'orchard',
      kind: 'lick',
      grade: 1,
      trains: '1 3 5',
      tab: '-5 -6 +7:2',
    },
    {
      id: 'orchard-down',
      kind: 'lick',
      grade: 1,
      trains: '6 5 3 2 1',
      tab: '-8:1/2 +7:1/2 -6:1/2 +6:1/2 -5:2',
    },
    {
      id: 'plum',
      kind: 'lick',
      grade: 3,
      trains: 'flat third into third',
      tab: "-6':1/2 -6:1/2 +7 -6:1/2 +6:1/2 -5",
    },
    {
      id: 'quince',
      kind: 'lick',
      grade: 3,
      trains: '3 b3 2 1',
      tab: "+7:1/2 -6:1/2 -6':1/2 +6:1/2 -5:2",
    },
    {
      id: 'hay-cart',
      kind: 'lick',
      grade: 2,
      trains: '1 2 3 5 6 5',
      tab: '-5:1/2 +6:1/2 -6:1/2 +7:1/2 -8 +7',
    },
    {
      id: 'mill-pond',
      kind: 'lick',
      grade: 1,
      trains: 'slow: long and short',
      metre: '12/8',
      feel: 'slow-12/8',
      tab: '-5:2/3 -6:1/3 +7:2/3 -6:1/3 -5:2',
    },
    {
      id: 'upper-orchard',
      kind: 'lick',
      grade: 2,
      trains: 'the upper root',
      tab: '-9:1/2 -8:1/2 +7:1/2 -6:1/2 -5:2',
    },
    {
      id: 'twelfth-five',
      kind: 'fill',
      grade: 1,
      trains: 'tones of V',
      harmony: '| V7 |',
      tab: 'r:2 +4:1/2 +5:1/2 +6',
    },
    {
      id: 'twelfth-four',
      kind: 'fill',
      grade: 2,
      trains: 'root and third of IV',
      harmony: '| IV7 |',
      tab: 'r:2 -5:1/2 -4:1/2 -5',
    },
    {
      id: 'twelfth-riff',
      kind: 'riff',
      grade: 2,
      trains: '1 3 5 6 5, counted from the chord',
      from: 'chord',
      tab: '-5 -6:1/2 +7:1/2 -8 +7',
    },
  ],
};
