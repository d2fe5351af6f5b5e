import { ReedplateError } from '@reedplate/pitch';

/** Most parts of a score: a large orchestra has fewer than a hundred. */
const MOST_PARTS = 256;
/** Most staves of a part: an organ has three. Each has all measures, with notes or without. */
const MOST_STAVES = 16;

/** @throws ReedplateError `MUSICXML_MALFORMED` */
export function requireParts(count: number): void {
  requireAtMost(count, MOST_PARTS, 'parts');
}

/** @throws ReedplateError `MUSICXML_MALFORMED` */
export function requireStaves(count: number): void {
  requireAtMost(count, MOST_STAVES, 'staves in a part');
}

function requireAtMost(count: number, most: number, what: string): void {
  if (count <= most) return;
  const expected = `at most ${most} ${what}`;
  throw new ReedplateError({ code: 'MUSICXML_MALFORMED', value: count, expected });
}
