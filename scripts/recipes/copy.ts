import { cpSync, existsSync, mkdirSync, mkdtempSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { workFiles } from '../lib/cache.mjs';
import { workspacePackages } from '../lib/packages.mjs';
import { ROOT } from '../lib/root.mjs';

/** A copy of the work tree in a folder of its own, with what is installed here. */
export function copyWorkTree(): string {
  const folder = mkdtempSync(join(tmpdir(), 'reedplate-recipe-'));
  for (const file of workFiles()) {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    cpSync(ROOT + file, join(folder, file));
  }
  const installed = ['', ...workspacePackages().map(({ dir }) => `packages/${dir}/`)];
  for (const place of installed.map((at) => `${at}node_modules`)) {
    if (existsSync(ROOT + place)) symlinkSync(ROOT + place, join(folder, place));
  }
  return folder;
}
