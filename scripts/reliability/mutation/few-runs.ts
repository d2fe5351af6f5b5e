import * as fastCheck from 'fast-check';

/** Stands in for fast-check in a test file: the same, but properties may be tried on fewer cases. */
export interface FewRuns {
  readonly module: unknown;
  /** Most cases of a property from here on; none for as many as it asks for. */
  most: number | undefined;
}

/** A stand-in for fast-check that tries every property on as many cases as it asks for, until told otherwise. */
export function makeFewRuns(): FewRuns {
  const assert = (
    property: fastCheck.IRawProperty<unknown>,
    { numRuns = 100, ...others }: fastCheck.Parameters<unknown> = {},
  ) => {
    const most = fewRuns.most ?? numRuns;
    return fastCheck.assert(property, { ...others, numRuns: Math.min(numRuns, most) });
  };
  const fc = { ...fastCheck.default, assert };
  const module = { ...fastCheck, assert, default: fc, __esModule: true };
  const fewRuns: FewRuns = { module, most: undefined };
  return fewRuns;
}
