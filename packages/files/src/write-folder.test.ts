import { mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { writeFolder } from './write-folder.js';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const place = (): string => mkdtempSync(join(tmpdir(), 'write-folder-'));

describe('writeFolder', () => {
  it('writeFolder writes every file, and leaves nothing beside it', () => {
    const dir = place();
    writeFolder(
      join(dir, 'lesson'),
      new Map([
        ['a.txt', bytes('a')],
        ['b.txt', bytes('b')],
      ]),
    );
    expect(readdirSync(dir)).toEqual(['lesson']);
    expect(readFileSync(join(dir, 'lesson', 'b.txt'), 'utf8')).toBe('b');
  });

  it('writeFolder leaves a folder that holds something as it is', () => {
    const dir = place();
    mkdirSync(join(dir, 'lesson'));
    writeFileSync(join(dir, 'lesson', 'mine.txt'), 'mine');
    expect(() => writeFolder(join(dir, 'lesson'), new Map([['a.txt', bytes('a')]]))).toThrow(
      expect.objectContaining({ code: 'FILE_UNWRITABLE' }),
    );
    expect(readdirSync(dir)).toEqual(['lesson']);
    expect(readdirSync(join(dir, 'lesson'))).toEqual(['mine.txt']);
  });

  it('writeFolder writes nothing where one file cannot be written', () => {
    const dir = place();
    const files = new Map([
      ['a.txt', bytes('a')],
      ['no/such/b.txt', bytes('b')],
    ]);
    expect(() => writeFolder(join(dir, 'lesson'), files)).toThrow(
      expect.objectContaining({ code: 'FILE_UNWRITABLE' }),
    );
    expect(readdirSync(dir)).toEqual([]);
  });

  it('writeFolder takes an empty folder for its own', () => {
    const dir = place();
    mkdirSync(join(dir, 'lesson'));
    writeFolder(join(dir, 'lesson'), new Map([['a.txt', bytes('a')]]));
    expect(readdirSync(join(dir, 'lesson'))).toEqual(['a.txt']);
  });

  it('writeFolder says why there is no room for a folder', () => {
    const dir = place();
    writeFileSync(join(dir, 'file'), 'mine');
    mkdirSync(join(dir, 'full'));
    writeFileSync(join(dir, 'full', 'mine.txt'), 'mine');
    const refused: readonly (readonly [string, string])[] = [
      ['file', 'a file of that name is there'],
      ['full', 'it holds something already'],
      ['gone/lesson', 'its folder is not there'],
      ['file/lesson', 'its folder is not there'],
    ];
    for (const [name, why] of refused) {
      const path = join(dir, name);
      expect(() => writeFolder(path, new Map([['a.txt', bytes('a')]]))).toThrow(
        expect.objectContaining({
          code: 'FILE_UNWRITABLE',
          value: path,
          expected: `a file that can be written (${why})`,
        }),
      );
    }
    expect(readdirSync(dir).sort()).toEqual(['file', 'full']);
    expect(readFileSync(join(dir, 'file'), 'utf8')).toBe('mine');
  });
});
