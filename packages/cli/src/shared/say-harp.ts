import type { Harp } from '@reedplate/layout';

/** A harp in words: `C harp`, `low F harp`, `A harp (natural-minor)`. */
export function sayHarp({ key, register, tuning }: Harp): string {
  const low = register === 'standard' ? '' : `${register} `;
  return `${low}${key} harp${tuning === 'standard' ? '' : ` (${tuning})`}`;
}
