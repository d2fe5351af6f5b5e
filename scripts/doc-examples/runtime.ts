import { type ErrorCode, isReedplateError } from '@reedplate/pitch';
import { afterAll, expect } from 'vitest';
import { writeLiteral } from './literal.js';
import { applyUpdates, type Update } from './update.js';

const UPDATING = process.env.UPDATE_EXAMPLES === '1';
const updates: Update[] = [];

afterAll(() => applyUpdates(updates));

/** Where a claim stands in its file; lines count from 1. */
export interface ClaimPlace {
  readonly firstLine: number;
  readonly lastLine: number;
}

/** What the body of a generated test calls: one check for each claim of the fence. */
export interface RunningExample {
  readonly equals: (claim: number, actual: unknown, expected: unknown) => void;
  readonly throws: (claim: number, work: () => unknown, code: ErrorCode) => void;
  readonly rejects: (claim: number, work: () => Promise<unknown>, code: ErrorCode) => Promise<void>;
  /** Fails if a claim of the fence was never reached. */
  readonly finish: () => void;
}

/** Starts an example; `file` and `places` tell where its claims stand. */
export function startExample(file: string, places: readonly ClaimPlace[]): RunningExample {
  const reached = new Set<number>();
  const reach = (claim: number): string => {
    reached.add(claim);
    return `${file}:${places[claim]?.firstLine}`;
  };
  const equals: RunningExample['equals'] = (claim, actual, expected) => {
    const where = reach(claim);
    const place = places[claim];
    if (UPDATING && place !== undefined && !equalsQuietly(actual, expected)) {
      updates.push({ file, ...place, literal: writeLiteral(actual) });
    } else {
      expect(actual, where).toEqual(expected);
    }
  };
  return {
    equals,
    throws: (claim, work, code) => expectCode(reach(claim), code, outcomeOf(work)),
    rejects: async (claim, work, code) => {
      const where = reach(claim);
      expectCode(where, code, await work().then(returned, thrown));
    },
    finish: () =>
      expect([...reached].sort(), `${file}: claims reached`).toEqual([...places.keys()].sort()),
  };
}

type Outcome = { readonly returned: unknown } | { readonly thrown: unknown };
const returned = (value: unknown): Outcome => ({ returned: value });
const thrown = (error: unknown): Outcome => ({ thrown: error });

function outcomeOf(work: () => unknown): Outcome {
  try {
    return returned(work());
  } catch (error) {
    return thrown(error);
  }
}

function expectCode(where: string, code: ErrorCode, outcome: Outcome): void {
  const known = 'thrown' in outcome && isReedplateError(outcome.thrown);
  expect(known ? { thrown: outcome.thrown.code } : outcome, where).toEqual({ thrown: code });
}

function equalsQuietly(actual: unknown, expected: unknown): boolean {
  try {
    expect(actual).toEqual(expected);
    return true;
  } catch {
    return false;
  }
}
