import { afterEach, describe, expect, test, vi } from 'vitest';
import { showProgress } from './progress.js';

const calls = vi.hoisted((): unknown[] => []);

vi.mock('cli-progress', () => ({
  default: {
    SingleBar: class {
      start = (...given: readonly unknown[]) => void calls.push(['start', ...given]);
      update = (...given: readonly unknown[]) => void calls.push(['update', ...given]);
      stop = () => void calls.push(['stop']);
    },
  },
}));

const isTerminal = process.stderr.isTTY;
afterEach(() => {
  process.stderr.isTTY = isTerminal;
  calls.length = 0;
});

async function show(total: number): Promise<readonly unknown[]> {
  const { update, stop } = await showProgress(total);
  update(40, 3);
  update(140, 9);
  stop();
  return calls;
}

describe('showProgress', () => {
  test('showProgress draws a bar on a terminal, and never more than there is', async () => {
    process.stderr.isTTY = true;
    expect(await show(100)).toEqual([
      ['start', 100, 0, { tunes: 0 }],
      ['update', 40, { tunes: 3 }],
      ['update', 100, { tunes: 9 }],
      ['stop'],
    ]);
  });

  test('showProgress draws nothing where no one looks, or where the end is not known', async () => {
    process.stderr.isTTY = false;
    expect(await show(100)).toEqual([]);
    process.stderr.isTTY = true;
    expect(await show(0)).toEqual([]);
  });
});
