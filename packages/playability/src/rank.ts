import {
  type Candidate,
  type FitLine,
  type Searched,
  searchCandidateSteps,
} from './fit-candidate.js';
import type { Steps } from './in-steps.js';

/** The best of the candidates, and how many were searched to know. */
export interface Ranking<Of extends Candidate> {
  readonly best: readonly Searched<Of>[];
  readonly searched: number;
}

/**
 * The `count` best candidates, the very best first: by what is missing, then by effort, then by
 * order. Exact: only those are passed over whose bound is above what the last one ranked costs. Each
 * search is done in steps.
 *
 * @internal
 */
export function* rankCandidates<Of extends Candidate>(
  line: FitLine,
  candidates: readonly Of[],
  count: number,
): Steps<Ranking<Of>> {
  const best: Searched<Of>[] = [];
  let searched = 0;
  for (const candidate of [...candidates].sort(byPromise)) {
    if (isBeaten(candidate, best[count - 1])) break;
    searched += 1;
    best.push(yield* searchCandidateSteps(line, candidate));
    best.sort(inRank);
    best.splice(count);
    yield;
  }
  return { best, searched };
}

function byPromise(a: Candidate, b: Candidate): number {
  return a.missing - b.missing || a.bound - b.bound || a.order - b.order;
}

/** Candidates come by promise, so where one is beaten all that follow are. */
function isBeaten({ missing, bound }: Candidate, last: Searched | undefined): boolean {
  if (last === undefined) return false;
  const more = missing - last.candidate.missing;
  return more > 0 || (more === 0 && bound > last.way.cost);
}

function inRank(a: Searched, b: Searched): number {
  return (
    a.candidate.missing - b.candidate.missing ||
    a.way.cost - b.way.cost ||
    a.candidate.order - b.candidate.order
  );
}
