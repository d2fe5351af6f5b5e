import { spawn } from 'node:child_process';
import { closeSync, existsSync, openSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const CLI = fileURLToPath(new URL('../../reedplate/src/bin.ts', import.meta.url));

interface Ending {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

interface Running {
  readonly closePipe?: boolean;
  /** What standard output is: a file that is open, or a pipe that is read. */
  readonly output?: number | 'pipe';
}

/** Runs the command as a process of its own, from source. */
function runProcess(
  words: readonly string[],
  { closePipe = false, output = 'pipe' }: Running = {},
): Promise<Ending> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', 'tsx', CLI, ...words], {
      stdio: ['ignore', output, 'pipe'],
    });
    const written = { out: '', err: '' };
    child.stdout?.on('data', (text) => {
      written.out += text;
    });
    child.stderr?.on('data', (text) => {
      written.err += text;
    });
    if (closePipe) child.stdout?.destroy();
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, ...written }));
  });
}

describe('the reedplate process', { timeout: 60_000 }, () => {
  test('reedplate prints a report to a pipe, without colour', async () => {
    const { code, out, err } = await runProcess(['pick', '--key', 'G']);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/1 {2}C harp +2 \(cross harp\)/u);
    expect(out).not.toContain('\u001b');
  });

  test('reedplate leaves no trace where its reader has gone away', async () => {
    const { code, err } = await runProcess(['map', '--harp', 'C', '--json'], { closePipe: true });
    expect([code, err]).toEqual([0, '']);
  });

  test.runIf(existsSync('/dev/full'))(
    'reedplate exits with 1 and one line where its output finds no room',
    async () => {
      const output = openSync('/dev/full', 'w');
      for (const words of [['pick', '--key', 'G'], ['--help'], ['map', '--harp', 'C', '--json']]) {
        const { code, err } = await runProcess(words, { output });
        expect(err).toBe('reedplate: standard output cannot be written: the disk is full\n');
        expect(code).toBe(1);
      }
      closeSync(output);
    },
  );

  test.runIf(existsSync('/dev/full'))(
    'reedplate says of wrong input only that, where its output finds no room',
    async () => {
      const output = openSync('/dev/full', 'w');
      const { code, err } = await runProcess(['map', '--harp', 'H'], { output });
      expect(err).toMatch(/^reedplate: "H" is not a key[^\n]*\n$/u);
      expect(code).toBe(2);
      closeSync(output);
    },
  );

  test('reedplate exits with 2 and one line, no stack, for wrong input', async () => {
    const { code, out, err } = await runProcess(['map', '--harp', 'H']);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/^reedplate: "H" is not a key[^\n]*\n$/u);
  });
});
