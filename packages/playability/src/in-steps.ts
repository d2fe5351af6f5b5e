// What every runtime has: declared here, since a library for pages and for Node takes the types of neither.
declare const performance: { now: () => number };
declare const setTimeout: (act: () => void, milliseconds: number) => unknown;

/** What ends a long call: the signal of an `AbortController`. */
export interface StopSignal {
  readonly aborted: boolean;
  /** Throws the reason where it is aborted. */
  readonly throwIfAborted: () => void;
}

/** Work cut into steps: what it comes to is returned at the end. */
export type Steps<Result> = Generator<undefined, Result>;

/**
 * Milliseconds of work between two looks at the signal: short beside the 100 within which a call is to end,
 * long beside what giving way costs.
 */
const LONGEST_STRETCH = 20;

/**
 * Does all steps at once.
 *
 * @internal
 */
export function doSteps<Result>(steps: Steps<Result>): Result {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * Does steps in stretches of some milliseconds and lets other work in between, so that a signal is heard.
 * What comes out is that of {@link doSteps}: the clock decides only when others get their turn.
 *
 * @internal
 * @throws the reason of the signal, as soon as it is aborted
 */
export async function doStepsInTurn<Result>(
  steps: Steps<Result>,
  signal?: StopSignal,
): Promise<Result> {
  signal?.throwIfAborted();
  let began = performance.now();
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    if (performance.now() - began < LONGEST_STRETCH) continue;
    await giveWay();
    signal?.throwIfAborted();
    began = performance.now();
  }
}

const giveWay = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
