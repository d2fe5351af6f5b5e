import { mkdirSync, readdirSync } from 'node:fs';
import { workspacePackages } from '../lib/packages.mjs';
import { run } from '../lib/run.mjs';
import { pnpm } from '../lib/tools.mjs';

/** A package as it would be published. */
export interface Packed {
  readonly name: string;
  readonly dir: string;
  /** Whole path of the tarball. */
  readonly tarball: string;
  /** File names of the schemas it ships. */
  readonly schemas: readonly string[];
  /** Every file of the tarball, its path from the root of the package, in order. */
  readonly files: readonly string[];
}

/** Packs every package into a folder, by the tool that publishes them. */
export function packAll(folder: string): readonly Packed[] {
  mkdirSync(folder, { recursive: true });
  pnpm(['--recursive', '--filter', './packages/*', 'pack', '--pack-destination', folder], {
    capture: true,
  });
  return workspacePackages().map(({ dir, path, manifest }) => {
    const file = `${manifest.name.replace('@', '').replace('/', '-')}-${manifest.version}.tgz`;
    const shipsSchemas = manifest.files.includes('schemas');
    const schemas = shipsSchemas ? readdirSync(`${path}/schemas`) : [];
    const tarball = `${folder}/${file}`;
    return { name: manifest.name, dir, tarball, schemas, files: filesIn(tarball) };
  });
}

function filesIn(tarball: string): readonly string[] {
  const listed = run('tar', ['-tzf', tarball], { capture: true }).split('\n');
  return listed
    .filter((line) => line !== '')
    .map((line) => line.replace(/^package\//u, ''))
    .sort();
}
