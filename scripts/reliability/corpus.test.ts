import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test, vi } from 'vitest';
import { ROOT } from '../lib/root.mjs';
import { outcomeOf } from './growth.js';
import { READERS } from './readers.js';
import { SEEDS } from './seeds.js';

vi.setConfig({ testTimeout: 60_000 });
const CORPUS = `${ROOT}scripts/reliability/corpus`;

const kept = READERS.flatMap((reader) => {
  const folder = `${CORPUS}/${reader.name}`;
  const files = existsSync(folder) ? readdirSync(folder) : [];
  return files.map((file) => ({
    reader,
    file: `${folder}/${file}`,
    name: `${reader.name}: ${file}`,
  }));
});

describe('inputs that once failed', () => {
  test.each(kept)('$name', ({ reader, file }) => {
    const bytes = readFileSync(file);
    const input = file.endsWith('.txt') ? bytes.toString('utf8') : new Uint8Array(bytes);
    const before = process.cpuUsage();
    expect(outcomeOf(() => reader.read(input))).toMatch(/^(?:read|[A-Z_]+)$/u);
    const { user, system } = process.cpuUsage(before);
    // A search may take seconds, and several times as many where coverage is counted.
    expect((user + system) / 1000).toBeLessThan(reader.kind === 'search' ? 20_000 : 2000);
  });

  test('the corpus belongs to readers that there are', () => {
    const names = READERS.map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(readdirSync(CORPUS)));
  });
});

describe('seeds of the fuzzer', () => {
  test.each(READERS)('every reader has some, and $name takes one of them', ({ name, read }) => {
    const outcomes = (SEEDS[name] ?? []).map((seed) => outcomeOf(() => read(seed)));
    expect(outcomes).toContain('read');
  });
});
