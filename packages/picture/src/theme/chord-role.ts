import type { ChordRole } from './theme.js';

const STEP = /^(IV|iv|V|v|I|i)(?![IViv])/u;
const ROLES: ReadonlyMap<string, ChordRole> = new Map([
  ['I', 'one'],
  ['IV', 'four'],
  ['V', 'five'],
]);

/** What a chord is in its key by its numeral; a secondary chord such as V7/V is another one. */
export function roleOf(numeral: string | null): ChordRole {
  if (numeral === null || numeral.includes('/')) return 'other';
  return ROLES.get(STEP.exec(numeral)?.[1]?.toUpperCase() ?? '') ?? 'other';
}
