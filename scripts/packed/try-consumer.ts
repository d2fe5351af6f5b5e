import { ROOT } from '../lib/root.mjs';
import { exitCodeOf, run } from '../lib/run.mjs';
import { pnpm, tool } from '../lib/tools.mjs';
import { TYPED_PROJECTS } from './consumer.js';

/** Installs a consumer with a package manager. */
export const INSTALLERS: Readonly<Record<string, (folder: string) => void>> = {
  npm: (cwd) =>
    void run('npm', ['install', '--prefer-offline', '--loglevel=error'], { cwd, capture: true }),
  pnpm: (cwd) => void pnpm(['install', '--prefer-offline', '--loglevel=error'], { cwd }),
};

/** A way to install a project and to run a script in it. */
export interface Manager {
  readonly install: (folder: string) => void;
  readonly node: (folder: string, script: string) => void;
}

const YARN_CLASSIC = ['-y', 'yarn@1.22.22'];
const YARN_MODERN = ['-y', '--package=@yarnpkg/cli-dist@4.18.1', 'yarn'];
const plainNode = (cwd: string, script: string): void => void run('node', [script], { cwd });

/** Every manager that people have, yarn 4 with its own resolution of modules. */
export const MANAGERS: Readonly<Record<string, Manager>> = {
  npm: { install: (cwd) => INSTALLERS.npm?.(cwd), node: plainNode },
  pnpm: { install: (cwd) => INSTALLERS.pnpm?.(cwd), node: plainNode },
  'yarn-1': {
    // A cache of its own: yarn 1 takes a package of the same name and version from an earlier run for this one.
    install: (cwd) =>
      void run(
        'npx',
        [
          ...YARN_CLASSIC,
          'install',
          '--silent',
          '--no-lockfile',
          '--cache-folder',
          `${cwd}/.cache`,
        ],
        { cwd, capture: true },
      ),
    node: plainNode,
  },
  'yarn-4': {
    install: (cwd) =>
      void run('npx', [...YARN_MODERN, 'install'], { cwd, env: PNP, capture: true }),
    node: (cwd, script) => void run('npx', [...YARN_MODERN, 'node', script], { cwd, env: PNP }),
  },
};

const PNP = {
  YARN_NODE_LINKER: 'pnp',
  YARN_ENABLE_TELEMETRY: '0',
  YARN_ENABLE_GLOBAL_CACHE: 'false',
  YARN_ENABLE_IMMUTABLE_INSTALLS: 'false',
};

/** Loads every package of an installed consumer as ES module and as CommonJS, and runs the command. */
export function tryRunning(cwd: string): void {
  run('node', ['load.mjs'], { cwd });
  run('node', ['load.cjs'], { cwd });
  const command = `${cwd}/node_modules/.bin/reedplate`;
  JSON.parse(run(command, ['pick', '--key', 'G', '--json'], { cwd, capture: true }));
  if (!run(command, ['--help'], { cwd, capture: true }).includes('Usage')) {
    throw new Error('reedplate --help shows no usage');
  }
  expectUsageError(command, cwd);
}

function expectUsageError(command: string, cwd: string): void {
  try {
    run(command, ['pick', '--key', 'H'], { cwd, capture: true });
  } catch (error) {
    if (exitCodeOf(error) === 2) return;
    throw error;
  }
  throw new Error('reedplate pick --key H does not fail');
}

/** Compilers that consumers still have, beside ours: by the names that the root's manifest gives them. */
const OLDER_COMPILERS = ['typescript-5.0', 'typescript-5.4'];

/** Type-checks small programs in an installed consumer, in every module resolution and by older compilers. */
export function tryTypes(cwd: string): void {
  for (const project of TYPED_PROJECTS) tool('tsc', ['-p', `${cwd}/${project}`]);
  for (const compiler of OLDER_COMPILERS) {
    run('node', [`${ROOT}node_modules/${compiler}/bin/tsc`, '-p', `${cwd}/bundler`], { cwd });
  }
  console.log(`types checked: ${[...TYPED_PROJECTS, ...OLDER_COMPILERS].join(', ')}`);
}
