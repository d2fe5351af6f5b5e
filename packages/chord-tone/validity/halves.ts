import type { Solo } from './read-solos.js';

/** A half of the solos. */
export interface Half {
  readonly name: 'chosen on' | 'reported on';
  readonly solos: readonly Solo[];
}

/** The stated split: numbers that leave 1 when divided by 4 were used to choose weights. */
export function halvesOf(solos: readonly Solo[]): readonly Half[] {
  const isForChoosing = ({ id }: Solo): boolean => id % 4 === 1;
  const halves: readonly Half[] = [
    { name: 'chosen on', solos: solos.filter(isForChoosing) },
    { name: 'reported on', solos: solos.filter((solo) => !isForChoosing(solo)) },
  ];
  return halves.filter((half) => half.solos.length > 0);
}
