import type { StudyLineFailure } from './batch.js';

/** Most that are held: what reads a whole corpus wrongly shall not fill the memory. */
const MOST = 100_000;

/** Failures held back until a tune is read, so that what holds no tune at all is said once. */
export interface HeldFailures {
  readonly add: (failures: readonly StudyLineFailure[], isAnyRead: boolean) => void;
  /** The first one that was held and not told. */
  readonly first: () => StudyLineFailure | undefined;
}

/** None held yet; `tell` takes those that are to be told. */
export function holdFailures(
  tell: ((failures: readonly StudyLineFailure[]) => void) | undefined,
  isAnyRead: boolean,
): HeldFailures {
  let held: StudyLineFailure[] | undefined = isAnyRead ? undefined : [];
  return {
    add: (failures, isRead) => {
      if (held === undefined) {
        tell?.(failures);
        return;
      }
      held.push(...failures);
      if (!isRead && held.length < MOST) return;
      tell?.(held);
      held = undefined;
    },
    first: () => held?.[0],
  };
}
