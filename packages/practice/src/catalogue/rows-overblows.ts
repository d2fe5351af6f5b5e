import type { PhraseGroup } from './phrase-row.js';

/** Phrases that need overblows: the thirds of IV and V that bends do not give. Grade 5. */
export const ROWS_OVERBLOWS: PhraseGroup = {
  position: 2,
  rows: [
    {
      id: 'copper-gate',
      kind: 'fill',
      grade: 5,
      trains: 'over IV: the flat third into the third by overblow',
      harmony: '| IV7 |',
      tab: '+4:1/2 +4o:1/2 +5 +6 r',
    },
    {
      id: 'brass-rail',
      kind: 'lick',
      grade: 5,
      trains: 'over IV: down from its seventh, an overblow',
      harmony: '| IV7 |',
      tab: '+6o:1/2 +6:1/2 +5:1/2 +4:1/2 +4:2',
    },
    {
      id: 'third-of-five',
      kind: 'lick',
      grade: 5,
      trains: 'over V: its third, an overblow, between root and fifth',
      harmony: '| V7 |',
      tab: '-6:1/2 +5o:1/2 -4 +5o:1/2 -6:1/2 -4',
    },
    {
      id: 'attic-step',
      kind: 'lick',
      grade: 5,
      trains: 'the flat third high up, by overblow',
      tab: '+6o:1/2 +6:1/2 -5 -4:1/2 -5:1/2 +6',
    },
    {
      id: 'porch-rail',
      kind: 'lick',
      grade: 5,
      trains: 'the thirds of V and IV, one by overblow',
      harmony: '| V7 | IV7 |',
      tab: '-4:1/2 +5o:1/2 -6 -6:1/2 +5o:1/2 -4 | +4:1/2 +5:1/2 +6 +6o:1/2 +6:1/2 +4',
    },
    {
      id: 'three-doors',
      kind: 'riff',
      from: 'chord',
      grade: 5,
      trains:
        'the flat third into the third of every chord: by bend over I, by overblow over IV and V',
      tab: "-3':1/2 -3:1/2 -4 -2:1/2 -2:1/2 r",
    },
    {
      id: 'slate-roof',
      kind: 'fill',
      position: 3,
      grade: 5,
      trains: 'minor: the third of iv, an overblow',
      harmony: '| iv7 |',
      tab: '+6:1/2 +6o:1/2 +6 -4:1/2 +6:1/2 +6',
    },
    {
      id: 'orchard-wall',
      kind: 'fill',
      position: 12,
      grade: 5,
      trains: 'the root of IV, an overblow',
      harmony: '| IV7 |',
      tab: 'r:2 -8:1/2 +6o:1/2 +6o',
    },
  ],
};
