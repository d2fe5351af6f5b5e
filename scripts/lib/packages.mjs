import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { ROOT } from './root.mjs';

/**
 * @typedef {object} WorkspacePackage
 * @property {string} dir folder name under packages/
 * @property {string} path whole path, no closing slash
 * @property {Record<string, any>} manifest its package.json
 */

/**
 * Every package of the workspace, by folder name.
 *
 * @returns {WorkspacePackage[]}
 */
export function workspacePackages() {
  return readdirSync(`${ROOT}packages`)
    .sort()
    .map((dir) => ({ dir, path: `${ROOT}packages/${dir}` }))
    .filter(({ path }) => existsSync(`${path}/package.json`))
    .map((found) => ({
      ...found,
      manifest: JSON.parse(readFileSync(`${found.path}/package.json`, 'utf8')),
    }));
}
