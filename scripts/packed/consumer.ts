import { copyFileSync, mkdirSync, writeFileSync } from 'node:fs';
import { ROOT } from '../lib/root.mjs';
import type { Packed } from './pack.js';

const FIXTURES = `${ROOT}test/consumer`;

/** Makes a project, outside the workspace, that depends on every tarball. */
export function makeConsumer(folder: string, packed: readonly Packed[]): void {
  mkdirSync(folder, { recursive: true });
  const tarballs = Object.fromEntries(packed.map(({ name, tarball }) => [name, `file:${tarball}`]));
  writeJson(`${folder}/package.json`, {
    private: true,
    dependencies: tarballs,
    // The packages ask for each other by version, and that version is not published yet.
    overrides: tarballs,
    pnpm: { overrides: tarballs },
  });
  writeJson(`${folder}/names.json`, {
    names: packed.map(({ name }) => name),
    schemas: packed.flatMap(({ name, schemas }) =>
      schemas.map((file) => `${name}/schemas/${file}`),
    ),
  });
  for (const file of ['load.mjs', 'load.cjs'])
    copyFileSync(`${FIXTURES}/${file}`, `${folder}/${file}`);
  for (const { file, compilerOptions } of RESOLUTIONS) {
    const project = `${folder}/${compilerOptions.moduleResolution}-${file.split('.').at(-1)}`;
    mkdirSync(project);
    copyFileSync(`${FIXTURES}/usage.ts`, `${project}/${file}`);
    writeJson(`${project}/tsconfig.json`, { compilerOptions: { ...STRICT, ...compilerOptions } });
  }
}

const STRICT = { strict: true, skipLibCheck: false, noEmit: true, target: 'ES2022', types: [] };

/** The ways in which a consumer's compiler may look for types. */
const RESOLUTIONS = [
  { file: 'usage.mts', compilerOptions: { module: 'node16', moduleResolution: 'node16' } },
  { file: 'usage.cts', compilerOptions: { module: 'node16', moduleResolution: 'node16' } },
  { file: 'usage.ts', compilerOptions: { module: 'esnext', moduleResolution: 'bundler' } },
  { file: 'usage.ts', compilerOptions: { module: 'commonjs', moduleResolution: 'node10' } },
];

/** Folders of a consumer that hold a TypeScript project each. */
export const TYPED_PROJECTS: readonly string[] = RESOLUTIONS.map(
  ({ file, compilerOptions }) => `${compilerOptions.moduleResolution}-${file.split('.').at(-1)}`,
);

const writeJson = (file: string, value: unknown): void =>
  writeFileSync(file, JSON.stringify(value, null, 2));
