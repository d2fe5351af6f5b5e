import { closeSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { openFile, systemCode, systemReason } from './open-file.js';

const folder = mkdtempSync(join(tmpdir(), 'reedplate-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('openFile', () => {
  test('openFile opens what can be read, a device too', () => {
    const path = join(folder, 'take.json');
    writeFileSync(path, '{}');
    for (const each of [path, '/dev/null']) {
      const file = openFile(each);
      expect(file).toBeGreaterThan(2);
      closeSync(file);
    }
  });

  test('openFile says why a file cannot be read, and which', () => {
    mkdirSync(join(folder, 'takes'));
    symlinkSync(join(folder, 'round'), join(folder, 'round'));
    const refused: readonly (readonly [string, string])[] = [
      ['takes', 'it is a directory'],
      ['gone.json', 'there is no such file'],
      ['take.json/take.json', 'there is no such file'],
      ['round', 'its links lead in a circle'],
      ['n'.repeat(300), 'its name is too long'],
    ];
    for (const [name, why] of refused) {
      const path = join(folder, name);
      expect(() => openFile(path)).toThrow(
        expect.objectContaining({
          code: 'FILE_UNREADABLE',
          value: path,
          expected: `a file that can be read (${why})`,
        }),
      );
    }
  });
});

describe('systemReason', () => {
  test.each([
    ['EACCES', 'permission is denied'],
    ['EIO', 'the disk has a fault'],
    ['ESOMETHING', 'ESOMETHING'],
  ])('systemReason says %s as "%s"', (code, words) => {
    const error = Object.assign(new Error(code), { code });
    expect([systemReason(error), systemCode(error)]).toEqual([words, code]);
  });

  test.each([[new Error('no code')], ['text'], [undefined]])(
    'systemReason of %s, which is no error of the system, is in words too',
    (error) => {
      expect([systemReason(error), systemCode(error)]).toEqual(['it cannot be opened', '']);
    },
  );
});
