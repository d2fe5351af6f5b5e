import { makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { doSteps, doStepsInTurn, type Steps } from './in-steps.js';
import { everyHarp, fitHarps, fitHarpsAsync } from './index.js';

/** Steps that each take so many milliseconds, and count themselves. */
function* slowSteps(many: number, took: number, done: { steps: number }): Steps<string> {
  for (let step = 0; step < many; step += 1) {
    const until = performance.now() + took;
    while (performance.now() < until);
    done.steps += 1;
    yield;
  }
  return 'all';
}

describe('doSteps and doStepsInTurn', () => {
  test('both come to the same, the second without a signal too', async () => {
    expect(doSteps(slowSteps(3, 0, { steps: 0 }))).toBe('all');
    expect(await doStepsInTurn(slowSteps(3, 0, { steps: 0 }))).toBe('all');
    expect(await doStepsInTurn(slowSteps(0, 0, { steps: 0 }), new AbortController().signal)).toBe(
      'all',
    );
  });

  test('doStepsInTurn lets others work, and stops after a few steps once it is told to', async () => {
    const controller = new AbortController();
    const done = { steps: 0 };
    const work = doStepsInTurn(slowSteps(1000, 5, done), controller.signal);
    let turns = 0;
    const other = setInterval(() => {
      turns += 1;
      if (turns === 2) controller.abort(new Error('enough'));
    }, 0);
    await expect(work).rejects.toThrow('enough');
    clearInterval(other);
    // Twenty milliseconds a stretch are four steps or five; some stretches pass before the second turn.
    expect(done.steps).toBeLessThan(100);
    const before = done.steps;
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(done.steps).toBe(before);
  });

  test('doStepsInTurn does no step where the signal was aborted before', async () => {
    const done = { steps: 0 };
    await expect(doStepsInTurn(slowSteps(3, 0, done), AbortSignal.abort())).rejects.toMatchObject({
      name: 'AbortError',
    });
    expect(done.steps).toBe(0);
  });
});

describe('fitHarpsAsync', () => {
  const pitches = [67, 69, 71, 72, 74, 76, 78, 79];
  const line = makeLine(pitches.map((pitch, at) => ({ start: at * 480, duration: 480, pitch })));

  test('fitHarpsAsync gives what fitHarps gives', async () => {
    const options = { count: 4, transpositions: [-2, 0, 2] };
    const { signal } = new AbortController();
    expect(await fitHarpsAsync(line, everyHarp(), { ...options, signal })).toEqual(
      fitHarps(line, everyHarp(), options),
    );
  });

  test('fitHarpsAsync refuses what fitHarps refuses, and ends with the reason of its signal', async () => {
    await expect(fitHarpsAsync(line, [])).rejects.toMatchObject({ code: 'LIST_EMPTY' });
    await expect(fitHarpsAsync(line, ['C'], { sginal: 1 } as never)).rejects.toMatchObject({
      code: 'OPTION_UNKNOWN',
      nearest: 'signal',
    });
    const signal = AbortSignal.abort(new Error('away'));
    await expect(fitHarpsAsync(line, everyHarp(), { signal })).rejects.toThrow('away');
  });
});
