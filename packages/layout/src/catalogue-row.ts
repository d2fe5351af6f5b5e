import type { Tuning } from './tuning.js';

/** A tuning of the catalogue as it is written: reeds by name, from hole 1 up. */
export type CatalogueRow = readonly [
  id: string,
  name: string,
  use: string,
  source: string,
  blow: string,
  draw: string,
  more?: Partial<Pick<Tuning, 'aliases' | 'label' | 'labelPosition'>>,
];
