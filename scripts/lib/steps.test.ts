import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { runSteps } from './steps.mjs';

describe('runSteps', () => {
  const printed: string[] = [];

  beforeEach(() => {
    printed.length = 0;
    vi.spyOn(console, 'log').mockImplementation((line) => void printed.push(line));
    vi.spyOn(console, 'error').mockImplementation((line) => void printed.push(line));
  });
  afterEach(() => vi.restoreAllMocks());

  test('runs each step in turn, names and times it', async () => {
    const done: string[] = [];
    const passed = await runSteps([
      ['first', () => done.push('first')],
      ['second', async () => done.push('second')],
    ]);
    expect(passed).toBe(true);
    expect(done).toEqual(['first', 'second']);
    expect(printed.join('\n')).toMatch(
      /\[1\/2\] first: done in \d+\.\d s[\s\S]*\[2\/2\] second: done/u,
    );
  });

  test('stops at the first step that fails and says why', async () => {
    const later = vi.fn();
    const failing = (): never => {
      throw new Error('the reason');
    };
    expect(
      await runSteps([
        ['broken', failing],
        ['later', later],
      ]),
    ).toBe(false);
    expect(later).not.toHaveBeenCalled();
    expect(printed.join('\n')).toMatch(/\[1\/2\] broken: failed after[\s\S]*the reason/u);
  });
});
