import { describe } from 'vitest';
import type { SourceId } from './bibliography.js';

/**
 * Tests of what one publication prints: each test within is a case that rests on it. `npm run sources`
 * counts them, and `docs/sources.md` lists them under the publication.
 *
 * @param source its id in the bibliography
 * @param facts what is taken from it, in a few words
 */
export function published(source: SourceId, facts: string, cases: () => void): void {
  describe(`${facts} [${source}]`, cases);
}
