import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { type WorkspacePackage, workspacePackages } from './lib/packages.mjs';
import { packageFacts } from './manifests/facts.js';
import { packageNameOf } from './manifests/import-rules.js';

// Writes each package's THIRD-PARTY-LICENSES.md; with --check only compares, and fails if one is stale.
// What a package takes in: dev dependencies that its source imports, and so bundles, and the data below.
const checking = process.argv.includes('--check');

/** Dev dependencies whose data a package's source holds a copy of, by the package's folder. */
const DATA_OF: ReadonlyMap<string, readonly string[]> = new Map([['pitch', ['tonal']]]);

function takenIn(found: WorkspacePackage): readonly string[] {
  const { sources } = packageFacts(found);
  const imported = sources
    .filter(({ isTest }) => !isTest)
    .flatMap(({ imports }) => imports.map(packageNameOf));
  const names = Object.keys(found.manifest.devDependencies ?? {});
  const asData = DATA_OF.get(found.dir) ?? [];
  return names.filter((name) => imported.includes(name) || asData.includes(name)).sort();
}

function foldersTakenIn(found: WorkspacePackage): readonly (readonly [string, string])[] {
  const folders = takenIn(found).map(
    (name) => [name, `${found.path}/node_modules/${name}`] as const,
  );
  return [...new Map(folders)].sort(([a], [b]) => (a < b ? -1 : 1));
}

function licencesOf(found: WorkspacePackage): string | undefined {
  const { manifest } = found;
  const folders = foldersTakenIn(found);
  if (folders.length === 0) return undefined;
  const sections = folders.map(([name, folder]) => sectionOf(name, folder));
  const intro = `${manifest.name} holds code or data of the packages below, under these licences.`;
  return `# Third-party licences\n\n${intro}\n${sections.join('')}`;
}

function sectionOf(name: string, folder: string): string {
  const { version, license } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
  const file = readdirSync(folder).find((entry) => /^licen[cs]e(?:\.|$)/iu.test(entry));
  if (file === undefined) throw new Error(`${name} ships no licence text`);
  const text = readFileSync(`${folder}/${file}`, 'utf8').replaceAll('\r\n', '\n').trim();
  return `\n## ${name} ${version} (${license})\n\n\`\`\`text\n${text}\n\`\`\`\n`;
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
