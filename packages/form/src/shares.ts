import { commonDivisor } from '@reedplate/line';
import type { FormBar } from './types.js';

/** All the shares of a bar together. */
export function sharesOf(bar: FormBar): number {
  return bar.reduce((sum, { weight }) => sum + weight, 0);
}

/** The bar with the smallest whole weights in the same proportion. */
export function lowestTerms(bar: FormBar): FormBar {
  const common = bar.reduce((divisor, { weight }) => commonDivisor(divisor, weight), 0);
  return bar.map(({ numeral, weight }) => ({ numeral, weight: weight / common }));
}
