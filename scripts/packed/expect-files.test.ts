import { describe, expect, test } from 'vitest';
import { wrongFiles } from './expect-files.js';

const FILES = ['LICENSE', 'README.md', 'package.json'];
const BUILT = ['dist/index.js', 'dist/index.cjs', 'dist/index.d.ts', 'dist/index.d.cts'];
const packed = (...files: readonly string[]) => ({
  name: 'one',
  schemas: [],
  files: [...FILES, ...BUILT, ...files],
});

describe('wrongFiles', () => {
  test('wrongFiles finds nothing wrong with what tsup and the manifests make', () => {
    const usual = ['dist/index.js.map', 'dist/bin.js', 'dist/main-ABCDEFGH.js', 'CHANGELOG.md'];
    expect(wrongFiles(packed(...usual))).toEqual([]);
  });

  test.each([
    'src/index.ts',
    'dist/index.test.js',
    '.env',
    'schemas/one.json.bak',
    'coverage/tests.json',
    'node_modules/x/index.js',
  ])('wrongFiles names %s as strange', (file) => {
    expect(wrongFiles(packed(file))).toEqual([`one ships ${file}, which nobody asked for`]);
  });

  test('wrongFiles names what is missing, schemas too', () => {
    const { files, ...rest } = packed();
    const less = files.filter((file) => file !== 'LICENSE');
    expect(wrongFiles({ ...rest, files: less, schemas: ['chart.json'] })).toEqual([
      'one does not ship LICENSE',
      'one does not ship schemas/chart.json',
    ]);
  });
});
