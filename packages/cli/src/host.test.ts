import { Writable } from 'node:stream';
import { describe, expect, test } from 'vitest';
import { main } from './main.js';

interface Screen {
  readonly isTTY?: boolean;
  readonly columns?: number;
  /** What the system answers to each write. */
  readonly refuses?: NodeJS.ErrnoException;
  /** Whether a write takes a while. */
  readonly slow?: boolean;
}

/** A stream that keeps what it is given, as a screen, a pipe or a disk would take it. */
function streamOf({ refuses, slow = false, ...screen }: Screen = {}) {
  const kept: string[] = [];
  const stream = new Writable({
    write(chunk, _, done) {
      const answer = () => {
        if (refuses === undefined) kept.push(`${chunk}`);
        done(refuses);
      };
      if (slow) setTimeout(answer, 5);
      else answer();
    },
  });
  return { stream: Object.assign(stream, screen), said: () => kept.join('') };
}

async function run(
  words: readonly string[],
  screen: Screen = {},
  env: Readonly<Record<string, string>> = {},
) {
  const stdout = streamOf(screen);
  const stderr = streamOf();
  const argv = ['node', 'reedplate', ...words];
  const code = await main({ argv, env, stdout: stdout.stream, stderr: stderr.stream });
  return { code, out: stdout.said(), err: stderr.said() };
}

const PICK = ['pick', '--key', 'G'];
const hasColour = async (screen: Screen, env: Readonly<Record<string, string>>) =>
  (await run(PICK, screen, env)).out.includes('\u001b[');
const fault = (code: string): NodeJS.ErrnoException => Object.assign(new Error(code), { code });

describe('main', () => {
  test.each([
    ['a screen', { isTTY: true }, {}, true],
    ['a pipe', {}, {}, false],
    ['a screen of who wants none', { isTTY: true }, { NO_COLOR: '1' }, false],
    ['a pipe of who wants some', {}, { FORCE_COLOR: '1' }, true],
    ['a pipe with a wish for none', {}, { FORCE_COLOR: '0' }, false],
    ['who wants both', { isTTY: true }, { NO_COLOR: '1', FORCE_COLOR: '1' }, false],
    ['an empty wish for none', { isTTY: true }, { NO_COLOR: '' }, true],
  ])('main gives colour to %s: %j with %j', async (_, screen, env, expected) => {
    expect(await hasColour(screen, env as Readonly<Record<string, string>>)).toBe(expected);
  });

  test.each([
    [{}, 80],
    [{ columns: 60 }, 60],
    [{ columns: 120 }, 120],
    [{ columns: 10 }, 40],
  ])('main prints on %j no wider than %d columns', async (screen, most) => {
    const { out } = await run(['target', '--key', 'G', '--harp', 'C'], screen);
    const widths = out.split('\n').map((line) => line.length);
    expect(Math.max(...widths)).toBeLessThanOrEqual(most);
    expect(Math.max(...widths)).toBeGreaterThan(most / 2);
  });

  test('main waits until a slow reader has all', async () => {
    const quick = await run(PICK);
    expect(await run(PICK, { slow: true })).toEqual(quick);
    expect(quick.out).toContain('cross harp');
  });

  test.each([false, true])(
    'main takes a reader that went away for no fault (slow: %j)',
    async (slow) => {
      expect(await run(PICK, { refuses: fault('EPIPE'), slow })).toEqual({
        code: 0,
        out: '',
        err: '',
      });
    },
  );

  test.each([false, true])(
    'main ends with 1 where nothing can be printed (slow: %j)',
    async (slow) => {
      expect(await run(PICK, { refuses: fault('ENOSPC'), slow })).toEqual({
        code: 1,
        out: '',
        err: 'reedplate: standard output cannot be written: the disk is full\n',
      });
    },
  );

  test('main gives the exit code of wrong input, and says what was wrong', async () => {
    const { code, out, err } = await run(['map', '--harp', 'H']);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/^reedplate: "H" is not a key[^\n]*\n$/u);
  });
});
