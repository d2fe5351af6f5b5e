import { makeChart } from '@reedplate/form';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { composeLine, composeLineAsync } from './compose-line.js';

const chart = makeChart('basic', 'G');
/** Composing over it takes a second or more. */
const long = makeChart('basic', 'G', { choruses: 30 });

/** A signal that is aborted when it has been looked at so many times. */
function abortedAfter(looks: number, reason: Error) {
  let left = looks;
  return {
    aborted: false,
    throwIfAborted: () => {
      if (left === 0) throw reason;
      left -= 1;
    },
  };
}

describe('composeLineAsync', () => {
  it('composeLineAsync gives what composeLine gives, to the note', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(), async (seed) => {
        const options = { seed, level: 'natural' } as const;
        expect(await composeLineAsync(chart, 'C', options)).toEqual(
          composeLine(chart, 'C', options),
        );
      }),
      { numRuns: 10 },
    );
  });

  it('composeLineAsync rejects with what composeLine throws', async () => {
    for (const options of [{ lowest: 61, highest: 61 }, { plan: 'A B' }, { density: 4 }]) {
      let thrown: unknown;
      try {
        composeLine(chart, 'C', options as never);
      } catch (error) {
        thrown = error;
      }
      expect(thrown).toMatchObject({ name: 'ReedplateError' });
      await expect(composeLineAsync(chart, 'C', options as never)).rejects.toEqual(thrown);
    }
    await expect(composeLineAsync(chart, 'C', { sede: 1 } as never)).rejects.toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
    );
  });

  it('composeLineAsync does not begin where its signal is aborted already', async () => {
    const reason = new Error('enough');
    const signal = AbortSignal.abort(reason);
    await expect(composeLineAsync(long, 'C', { signal })).rejects.toBe(reason);
  });

  it('composeLineAsync looks at its signal on the way, and ends with its reason', async () => {
    const reason = new Error('enough');
    const signal = abortedAfter(2, reason);
    await expect(composeLineAsync(long, 'C', { signal })).rejects.toBe(reason);
  });

  it('composeLineAsync lets other work in between', async () => {
    let turns = 0;
    let isDone = false;
    const count = (): void => {
      turns += 1;
      if (!isDone) setTimeout(count, 0);
    };
    setTimeout(count, 0);
    await composeLineAsync(long, 'C');
    isDone = true;
    expect(turns).toBeGreaterThan(2);
  });
});
