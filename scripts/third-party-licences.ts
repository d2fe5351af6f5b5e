import {
  existsSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import { type WorkspacePackage, workspacePackages } from './lib/packages.mjs';
import { packageFacts } from './manifests/facts.js';
import { packageNameOf } from './manifests/import-rules.js';

// Writes each package's THIRD-PARTY-LICENSES.md; with --check only compares, and fails if one is stale.
// What a package takes in: dev dependencies that its source imports, and what these need.
const checking = process.argv.includes('--check');

/** Dev dependencies that a package's source imports: they are bundled. */
function takenIn(found: WorkspacePackage): readonly string[] {
  const { sources } = packageFacts(found);
  const imported = sources
    .filter(({ isTest }) => !isTest)
    .flatMap(({ imports }) => imports.map(packageNameOf));
  const names = Object.keys(found.manifest.devDependencies ?? {});
  return names.filter((name) => imported.includes(name));
}

/** What a bundled package needs is bundled with it. */
function withNeeds(folders: readonly string[]): readonly string[] {
  const known = new Set(folders.map((folder) => realpathSync(folder)));
  for (const folder of known) {
    const { dependencies = {} } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
    const { resolve } = createRequire(`${folder}/package.json`);
    for (const name of Object.keys(dependencies)) {
      known.add(dirname(realpathSync(resolve(`${name}/package.json`))));
    }
  }
  return [...known];
}

function foldersTakenIn(found: WorkspacePackage): readonly string[] {
  return withNeeds(takenIn(found).map((name) => `${found.path}/node_modules/${name}`));
}

function licencesOf(found: WorkspacePackage): string | undefined {
  const { manifest } = found;
  const folders = foldersTakenIn(found);
  if (folders.length === 0) return undefined;
  const headings = folders.map((folder) => [headingOf(folder), textOf(folder)] as const).sort();
  const texts = [...new Set(headings.map(([, text]) => text))];
  const sections = texts.map((text) => {
    const under = headings.filter(([, other]) => other === text).map(([heading]) => heading);
    return `\n${[...new Set(under)].join('\n\n')}\n\n\`\`\`text\n${text}\n\`\`\`\n`;
  });
  const intro = `${manifest.name} holds code of the packages below, under these licences.`;
  return `# Third-party licences\n\n${intro}\n${sections.join('')}`;
}

function headingOf(folder: string): string {
  const { name, version, license } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
  if (!FITTING.has(license))
    throw new Error(`${name} is under ${license}, which is not looked at yet`);
  return `## ${name} ${version} (${license})`;
}

/** Licences under which code may go out with ours, which is MIT: they ask for their text to go along. */
const FITTING: ReadonlySet<string> = new Set([
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'ISC',
  'MIT',
]);

function textOf(folder: string): string {
  const read = (file: string): string =>
    readFileSync(`${folder}/${file}`, 'utf8').replaceAll('\r\n', '\n').trim();
  const files = readdirSync(folder);
  const file = files.find((entry) => /^licen[cs]e(?:\.|$)/iu.test(entry));
  if (file !== undefined) return read(file);
  // Some packages have it at the end of their README.
  const [, last] = files.includes('README.md') ? read('README.md').split(/^#+ licen[cs]e$/imu) : [];
  if (last === undefined) throw new Error(`${folder} ships no licence text`);
  return last.trim();
}

function bringUpToDate(found: WorkspacePackage): string[] {
  const file = `${found.path}/THIRD-PARTY-LICENSES.md`;
  const wanted = licencesOf(found);
  const present = existsSync(file) ? readFileSync(file, 'utf8') : undefined;
  if (wanted === present) return [];
  if (checking) return [file];
  if (wanted === undefined) rmSync(file);
  else writeFileSync(file, wanted);
  return [];
}

const stale = workspacePackages().flatMap(bringUpToDate);
for (const file of stale) console.error(`${file} is stale: run "npm run licences"`);
process.exitCode = stale.length === 0 ? 0 : 1;
