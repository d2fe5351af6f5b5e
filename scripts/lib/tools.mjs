import { readFileSync } from 'node:fs';
import { ROOT } from './root.mjs';
import { run } from './run.mjs';

/** @typedef {NonNullable<Parameters<typeof run>[2]>} RunOptions */

const { packageManager } = JSON.parse(readFileSync(`${ROOT}package.json`, 'utf8'));

/**
 * pnpm in the version that package.json names, fetched by npx where the machine has none.
 *
 * @param {readonly string[]} args
 * @param {RunOptions} [options]
 */
export const pnpm = (args, options) => run('npx', ['-y', packageManager, ...args], options);

/**
 * A command that one of the workspace's own dependencies provides.
 *
 * @param {string} name
 * @param {readonly string[]} args
 * @param {RunOptions} [options]
 */
export const tool = (name, args, options) => run(`${ROOT}node_modules/.bin/${name}`, args, options);
