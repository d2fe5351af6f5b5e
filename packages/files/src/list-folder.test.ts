import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { listFolder } from './list-folder.js';

const folder = mkdtempSync(join(tmpdir(), 'reedplate-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('listFolder', () => {
  test('listFolder gives the files in order, without folders and hidden files', () => {
    for (const name of ['b.tab', 'a.json', '.hidden', 'C.tab'])
      writeFileSync(join(folder, name), '');
    mkdirSync(join(folder, 'old'));
    expect(listFolder(folder)).toEqual(['C.tab', 'a.json', 'b.tab']);
  });

  test.each([
    ['a folder that is not there', 'gone', /gone" cannot be read: .*no such folder/u],
    ['a file', 'a.json', /a\.json" cannot be read: .*it is no folder/u],
  ])('listFolder refuses %s', (_, name, said) => {
    expect(() => listFolder(join(folder, name))).toThrowError(said);
  });

  test('listFolder refuses a folder of too many files', () => {
    const many = join(folder, 'many');
    mkdirSync(many);
    for (let at = 0; at <= 5000; at += 1) writeFileSync(join(many, `${at}`), '');
    expect(() => listFolder(many)).toThrowError(/at most 5000 files/u);
    rmSync(join(many, '0'));
    expect(listFolder(many)).toHaveLength(5000);
  });
});
