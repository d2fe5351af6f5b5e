import { describe, expect, test } from 'vitest';
import { exitCodeOf, run } from './run.mjs';

const node = (code: string, options = {}) =>
  run(process.execPath, ['-e', code], { capture: true, ...options });

describe('run', () => {
  test('returns what a command printed', () => {
    expect(node('console.log(1 + 1)')).toBe('2\n');
  });

  test('runs a command where and with what it is told', () => {
    const options = { cwd: '/', env: { REEDPLATE_TRIAL: 'yes' } };
    expect(node('console.log(process.cwd(), process.env.REEDPLATE_TRIAL)', options)).toBe(
      '/ yes\n',
    );
  });

  test("keeps npm's own settings from a command", () => {
    process.env.npm_config_trial = 'yes';
    expect(node('console.log(process.env.npm_config_trial)')).toBe('undefined\n');
  });

  test('throws with the exit code of a command that fails', () => {
    expect.assertions(1);
    try {
      node('process.exit(3)');
    } catch (error) {
      expect(exitCodeOf(error)).toBe(3);
    }
  });

  test('throws where there is no such command', () => {
    expect(() => run('no-such-command-here', [])).toThrow(/ENOENT|EACCES/u);
  });
});

test('exitCodeOf throws on any error that is not of run', () => {
  expect(() => exitCodeOf(new TypeError('other'))).toThrow('other');
});
