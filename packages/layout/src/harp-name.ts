import { type HarpByNameOptions, type HarpLike, harpByName } from './to-harp.js';

/**
 * What a harp is called in a list: its register where that is not the standard one, its key, and
 * its tuning where that is not the standard one.
 *
 * @example
 * ```ts
 * import { harpName, makeHarp, makeTuning } from '@reedplate/layout';
 *
 * harpName(makeHarp('C')); // => 'C'
 * harpName(makeHarp('F', { register: 'low' })); // => 'low F'
 * harpName(makeHarp('Am', { tuning: 'natural-minor' })); // => 'Am natural-minor'
 * const mine = makeTuning({ id: 'mine', blow: 'C4 E4', draw: 'D4 G4' });
 * harpName('low F mine', { known: { tunings: [mine] } }); // => 'low F mine'
 * ```
 */
export function harpName(harp: HarpLike, options: HarpByNameOptions = {}): string {
  const { register, key, tuning } = harpByName(harp, options, 'harpName');
  const parts = [register === 'standard' ? '' : register, key, tuning === 'standard' ? '' : tuning];
  return parts.filter((part) => part !== '').join(' ');
}
