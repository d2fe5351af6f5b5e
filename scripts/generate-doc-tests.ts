import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { type Fence, findFences } from './doc-examples/fences.js';
import { testFileOf } from './doc-examples/test-file.js';
import { workspacePackages } from './lib/packages.mjs';
import { ROOT } from './lib/root.mjs';

// Makes every TypeScript fence of the documentation into a test, one file a package.
const OUTPUT = 'test/generated';
process.chdir(ROOT);

function filesIn(folder: string, recursive: boolean): string[] {
  return readdirSync(folder, { recursive, encoding: 'utf8' })
    .map((file) => (folder === '.' ? file : `${folder}/${file}`))
    .sort();
}

const isDocumented = (file: string): boolean =>
  file.endsWith('.ts') && !/\.(?:test|test-d|fixture|d)\.ts$/u.test(file);

const fencesOf = (files: readonly string[]): Fence[] =>
  files.flatMap((file) => findFences(file, readFileSync(file, 'utf8')));

function fencesOfPackage(dir: string): Fence[] {
  const pages = filesIn(`packages/${dir}`, false).filter((file) => file.endsWith('README.md'));
  return fencesOf([...filesIn(`packages/${dir}/src`, true).filter(isDocumented), ...pages]);
}

function fencesOfPages(): Fence[] {
  const inDocs = filesIn('.', false).includes('docs') ? filesIn('docs', false) : [];
  return fencesOf([...filesIn('.', false), ...inDocs].filter((file) => file.endsWith('.md')));
}

rmSync(OUTPUT, { recursive: true, force: true });
mkdirSync(OUTPUT, { recursive: true });
const groups = workspacePackages().map(({ dir }) => [dir, fencesOfPackage(dir)] as const);
for (const [name, fences] of [...groups, ['pages', fencesOfPages()] as const]) {
  const running = fences.filter((fence) => fence.runs);
  if (running.length > 0) writeFileSync(`${OUTPUT}/${name}.test.ts`, testFileOf(running));
  const left = fences.length - running.length;
  console.log(`${name}: ${running.length} examples${left === 0 ? '' : `, ${left} marked no-run`}`);
}
