import type { CatalogueRow } from './catalogue-row.js';

/** Layouts of more than ten holes that carry the standard one on. */
export const EXTENDED_TUNING_ROWS = [
  {
    id: 'extended-top-twelve',
    name: 'Standard with two more holes on top',
    use: 'The standard layout carried on above hole 10.',
    source: 'from memory',
    blow: 'C4 E4 G4 C5 E5 G5 C6 E6 G6 C7 E7 G7',
    draw: 'D4 G4 B4 D5 F5 A5 B5 D6 F6 A6 B6 D7',
  },
  {
    id: 'extended-bottom-thirteen',
    name: 'Standard with three more holes below',
    use: 'The low end of blues twice, an octave apart.',
    source: 'common practice',
    blow: 'C3 E3 G3 C4 E4 G4 C5 E5 G5 C6 E6 G6 C7',
    draw: 'D3 G3 B3 D4 G4 B4 D5 F5 A5 B5 D6 F6 A6',
  },
  {
    id: 'extended-fourteen',
    name: 'Standard with three more holes below and one on top',
    use: 'The widest of the extended standard layouts.',
    source: 'from memory',
    blow: 'C3 E3 G3 C4 E4 G4 C5 E5 G5 C6 E6 G6 C7 E7',
    draw: 'D3 G3 B3 D4 G4 B4 D5 F5 A5 B5 D6 F6 A6 B6',
  },
] as const satisfies readonly CatalogueRow[];
