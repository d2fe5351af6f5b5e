import { copyFileSync, mkdirSync, writeFileSync } from 'node:fs';
import { ROOT } from '../lib/root.mjs';
import type { Packed } from './pack.js';

const FIXTURES = `${ROOT}test/consumer`;
const STRICT = { strict: true, skipLibCheck: false, noEmit: true, target: 'ES2022', types: [] };

/** The ways in which a consumer's compiler may look for types, each in a folder of its own. */
const RESOLUTIONS = [
  { folder: 'node16-esm', extension: 'mts', module: 'node16', moduleResolution: 'node16' },
  { folder: 'node16-cjs', extension: 'cts', module: 'node16', moduleResolution: 'node16' },
  { folder: 'bundler', extension: 'ts', module: 'esnext', moduleResolution: 'bundler' },
  { folder: 'node10', extension: 'ts', module: 'commonjs', moduleResolution: 'node10' },
] as const;

/** Folders of a consumer that hold a TypeScript project each. */
export const TYPED_PROJECTS: readonly string[] = RESOLUTIONS.map(({ folder }) => folder);

/** Makes a project, outside the workspace, that asks for `reedplate` alone. */
export function makeLoneConsumer(folder: string, packed: readonly Packed[]): void {
  mkdirSync(folder, { recursive: true });
  const tarballs = tarballsOf(packed);
  const { reedplate, ...others } = tarballs;
  writeJson(`${folder}/package.json`, {
    private: true,
    dependencies: { reedplate },
    // Not published yet: what the packages ask of each other comes from the tarballs, under each manager's name for that.
    overrides: others,
    resolutions: others,
    pnpm: { overrides: others },
  });
  // A folder of its own for yarn 4, which else looks for a project above.
  writeFileSync(`${folder}/yarn.lock`, '');
  copyFileSync(`${FIXTURES}/alone.mjs`, `${folder}/alone.mjs`);
  copyFileSync(`${ROOT}examples/first-blues/take.mid`, `${folder}/take.mid`);
}

const tarballsOf = (packed: readonly Packed[]): Readonly<Record<string, string>> =>
  Object.fromEntries(packed.map(({ name, tarball }) => [name, `file:${tarball}`]));

/** Makes a project, outside the workspace, that depends on every tarball. */
export function makeConsumer(folder: string, packed: readonly Packed[]): void {
  mkdirSync(folder, { recursive: true });
  const tarballs = tarballsOf(packed);
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
  for (const file of ['load.mjs', 'load.cjs']) {
    copyFileSync(`${FIXTURES}/${file}`, `${folder}/${file}`);
  }
  makeTypedProjects(folder, packed);
}

function makeTypedProjects(root: string, packed: readonly Packed[]): void {
  // A package without types would be an error here: strict allows no implicit any.
  const imports = packed.map(({ name }, index) => `export * as p${index} from '${name}';\n`);
  for (const { folder, extension, module, moduleResolution } of RESOLUTIONS) {
    const project = `${root}/${folder}`;
    mkdirSync(project);
    for (const name of ['usage', 'files']) {
      copyFileSync(`${FIXTURES}/${name}.ts`, `${project}/${name}.${extension}`);
    }
    writeFileSync(`${project}/every.${extension}`, imports.join(''));
    const compilerOptions = { ...STRICT, module, moduleResolution };
    writeJson(`${project}/tsconfig.json`, { compilerOptions });
  }
}

function writeJson(file: string, value: unknown): void {
  writeFileSync(file, JSON.stringify(value, null, 2));
}
