import type { Tuning } from './tuning.js';

/** A tuning of the catalogue as it is written: reeds by name, C and first position where not told. */
export interface CatalogueRow extends Pick<Tuning, 'id' | 'aliases' | 'name' | 'use' | 'source'> {
  readonly label?: Tuning['label'];
  readonly labelPosition?: Tuning['labelPosition'];
  readonly blow: string;
  readonly draw: string;
}
