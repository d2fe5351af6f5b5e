/** How many bytes of input go to a worker at once. */
export interface Pace {
  readonly bytes: () => number;
  /** Takes how long a batch took, in milliseconds. */
  readonly note: (took: number) => void;
}

const FEWEST = 4 * 1024;
const MOST = 32 * 1024;
/** Long enough to outweigh the handing over, short enough that no worker waits for another's last. */
const SHORT = 8;
const LONG = 40;

/** Begins with a few tunes and gives more or fewer as batches turn out short or long. */
export function makePace(): Pace {
  let bytes = 4 * FEWEST;
  return {
    bytes: () => bytes,
    note: (took) => {
      if (took < SHORT) bytes = Math.min(MOST, bytes * 2);
      else if (took > LONG) bytes = Math.max(FEWEST, bytes / 2);
    },
  };
}
