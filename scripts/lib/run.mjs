import { spawnSync } from 'node:child_process';
import { ROOT } from './root.mjs';

/** Under `npm test`, npm passes its own settings down; a nested install must not inherit them. */
const inherited = Object.fromEntries(
  Object.entries(process.env).filter(([name]) => !/^npm_(?!config_cache$)/i.test(name)),
);

/** Nothing here reports home or looks for newer versions of itself. */
const quiet = {
  DO_NOT_TRACK: '1',
  TURBO_TELEMETRY_DISABLED: '1',
  TURBO_NO_UPDATE_NOTIFIER: '1',
  NO_UPDATE_NOTIFIER: '1',
  npm_config_update_notifier: 'false',
  npm_config_fund: 'false',
  npm_config_audit: 'false',
};

/**
 * Runs a command to its end and throws if it fails; the error carries its `exitCode`.
 *
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{ cwd?: string, env?: Record<string, string>, capture?: boolean }} [options] `capture`
 *   returns what the command printed to its output instead of passing it on
 * @returns {string}
 */
export function run(command, args, { cwd = ROOT, env = {}, capture = false } = {}) {
  const { status, signal, error, stdout } = spawnSync(command, args, {
    cwd,
    env: { ...inherited, ...quiet, ...env },
    stdio: ['ignore', capture ? 'pipe' : 'inherit', 'inherit'],
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  if (error !== undefined) throw error;
  if (status !== 0) {
    if (capture) process.stderr.write(stdout);
    const message = `${[command, ...args].join(' ')} ended with ${signal ?? `exit code ${status}`}`;
    throw Object.assign(new Error(message), { exitCode: status ?? 1 });
  }
  return stdout ?? '';
}

/**
 * The exit code of the command behind an error that {@link run} threw; any other error is thrown on.
 *
 * @param {unknown} error
 */
export function exitCodeOf(error) {
  if (error instanceof Error && 'exitCode' in error) return Number(error.exitCode);
  throw error;
}
