import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { fileURLToPath } from 'node:url';
import { BIBLIOGRAPHY, type SourceId } from '../test/sources/bibliography.js';
import { collectCitations, publishedTests } from '../test/sources/collect.js';
import { sourcesPage } from '../test/sources/page.js';
import { PUBLICATIONS, type Source, type SourceKind } from '../test/sources/source.js';

// Writes docs/sources.md, and counts the cases of every source as vitest collects them:
//   npm run sources
// `npm test` runs the same cases; here none is run.

const ROOT = fileURLToPath(new URL('../', import.meta.url));
const SOURCES: readonly Source[] = BIBLIOGRAPHY;

writeFileSync(`${ROOT}docs/sources.md`, sourcesPage(SOURCES, collectCitations(ROOT).citations));

/** The full names of all cases, with the ids of their sources in brackets. */
function collectCases(): readonly string[] {
  const list = `${mkdtempSync(`${tmpdir()}/sources-`)}/cases.json`;
  const { status } = spawnSync(
    'npx',
    ['vitest', 'list', `--json=${list}`, ...publishedTests(ROOT)],
    { cwd: ROOT, stdio: ['ignore', 'ignore', 'inherit'] },
  );
  if (status !== 0) throw new Error(`vitest list gave status ${status}`);
  const cases: readonly { readonly name: string }[] = JSON.parse(readFileSync(list, 'utf8'));
  return cases.map(({ name }) => name);
}

const byId = new Map<string, number>();
let unknown = 0;
for (const name of collectCases()) {
  const id = [...name.matchAll(/\[([a-z0-9-]+)\](?= > |$)/gu)].at(-1)?.[1];
  if (id === undefined || !SOURCES.some((source) => source.id === id)) unknown += 1;
  else byId.set(id, (byId.get(id) ?? 0) + 1);
}

const countOf = (id: string): number => byId.get(id satisfies SourceId | string) ?? 0;
const kinds = [...new Set(SOURCES.map(({ kind }) => kind))];
const total = (kind: SourceKind): number =>
  SOURCES.filter((source) => source.kind === kind).reduce((sum, { id }) => sum + countOf(id), 0);

for (const kind of kinds) {
  console.log(`${kind}: ${total(kind)} cases`);
  for (const { id } of SOURCES.filter((source) => source.kind === kind)) {
    console.log(`  ${String(countOf(id)).padStart(4)}  ${id}`);
  }
}
const used = SOURCES.filter(({ id, kind }) => PUBLICATIONS.has(kind) && countOf(id) > 0);
const cases = used.reduce((sum, { id }) => sum + countOf(id), 0);
console.log(`cases from publications that are neither wiki pages nor programs: ${cases}`);
console.log(`such publications: ${used.length}`);
console.log(`cases without a source: ${unknown}`);
