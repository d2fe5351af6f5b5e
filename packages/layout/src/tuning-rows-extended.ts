import type { CatalogueRow } from './catalogue-row.js';

/** Layouts of more than ten holes that carry the standard one on. */
export const EXTENDED_TUNING_ROWS = [
  [
    'extended-top-twelve',
    'Standard with two more holes on top',
    'The standard layout carried on above hole 10.',
    'from memory',
    'C4 E4 G4 C5 E5 G5 C6 E6 G6 C7 E7 G7',
    'D4 G4 B4 D5 F5 A5 B5 D6 F6 A6 B6 D7',
  ],
  [
    'extended-bottom-thirteen',
    'Standard with three more holes below',
    'The low end of blues twice, an octave apart.',
    'common practice',
    'C3 E3 G3 C4 E4 G4 C5 E5 G5 C6 E6 G6 C7',
    'D3 G3 B3 D4 G4 B4 D5 F5 A5 B5 D6 F6 A6',
  ],
  [
    'extended-fourteen',
    'Standard with three more holes below and one on top',
    'The widest of the extended standard layouts.',
    'from memory',
    'C3 E3 G3 C4 E4 G4 C5 E5 G5 C6 E6 G6 C7 E7',
    'D3 G3 B3 D4 G4 B4 D5 F5 A5 B5 D6 F6 A6 B6',
  ],
] as const satisfies readonly CatalogueRow[];
