import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { type WorkspacePackage, workspacePackages } from './lib/packages.mjs';

// Writes each package's THIRD-PARTY-LICENSES.md; with --check only compares, and fails if one is stale.
// A package's own dev dependencies are what its dist takes in, as code or as data.
const checking = process.argv.includes('--check');

function licencesOf({ path, manifest }: WorkspacePackage): string | undefined {
  const names = Object.keys(manifest.devDependencies ?? {}).filter(
    (n) => !n.startsWith('@reedplate/'),
  );
  if (names.length === 0) return undefined;
  const sections = names.sort().map((name) => sectionOf(name, `${path}/node_modules/${name}`));
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
