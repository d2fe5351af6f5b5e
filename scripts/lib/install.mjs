import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { workspacePackages } from './packages.mjs';
import { ROOT } from './root.mjs';
import { pnpm } from './tools.mjs';

const STAMP = `${ROOT}node_modules/.reedplate-installed`;

/** Installs the workspace's dependencies, unless what is installed is what the manifests ask for. */
export function install() {
  if (existsSync(STAMP) && readFileSync(STAMP, 'utf8') === wanted()) return;
  const lockfile = process.env.CI ? '--frozen-lockfile' : '--no-frozen-lockfile';
  pnpm([
    'install',
    lockfile,
    '--prefer-offline',
    '--reporter=append-only',
    '--loglevel=error',
    '--config.confirmModulesPurge=false',
  ]);
  writeFileSync(STAMP, wanted());
}

/** One hash over all that decides what an install puts down. */
function wanted() {
  const hash = createHash('sha256').update(
    `${process.version} ${process.platform} ${process.arch}`,
  );
  const manifests = workspacePackages().map(({ path }) => `${path}/package.json`);
  const files = ['package.json', 'pnpm-workspace.yaml', 'pnpm-lock.yaml'].map((f) => ROOT + f);
  for (const file of [...files, ...manifests])
    hash.update(file.slice(ROOT.length)).update(readFileSync(file));
  return hash.digest('hex');
}
