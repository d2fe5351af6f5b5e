import { type HarpLike, toHarp } from './to-harp.js';

/**
 * What a harp is called in a list: its register where that is not the standard one, its key, and
 * its tuning where that is not the standard one.
 *
 * @example
 * ```ts
 * import { harpName, makeHarp } from '@reedplate/layout';
 *
 * harpName(makeHarp('C')); // => 'C'
 * harpName(makeHarp('F', { register: 'low' })); // => 'low F'
 * harpName(makeHarp('Am', { tuning: 'natural-minor' })); // => 'Am natural-minor'
 * ```
 */
export function harpName(harp: HarpLike): string {
  const { register, key, tuning } = toHarp(harp);
  const parts = [register === 'standard' ? '' : register, key, tuning === 'standard' ? '' : tuning];
  return parts.filter((part) => part !== '').join(' ');
}
