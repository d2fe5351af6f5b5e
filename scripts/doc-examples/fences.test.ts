import { describe, expect, test } from 'vitest';
import { findFences } from './fences.js';

const fence = (info: string, code: string): string => `\`\`\`${info}\n${code}\n\`\`\``;

describe('findFences', () => {
  test('finds TypeScript fences of a page with the line on which their code begins', () => {
    const page = [
      '# Page',
      '',
      fence('ts', 'one();'),
      fence('sh', 'npm test'),
      fence('ts', 'two();'),
    ];
    expect(findFences('page.md', page.join('\n'))).toEqual([
      { file: 'page.md', line: 4, code: 'one();', runs: true },
      { file: 'page.md', line: 10, code: 'two();', runs: true },
    ]);
  });

  test('marks a fence with no-run as one that does not run', () => {
    expect(findFences('page.md', fence('ts no-run', 'one();'))).toMatchObject([{ runs: false }]);
  });

  test('takes a fence within a longer fence as text', () => {
    const nested = `\`\`\`\`md\n${fence('ts', 'one();')}\n\`\`\`\``;
    expect(findFences('page.md', nested)).toEqual([]);
  });

  test('names the line of a fence that is never closed', () => {
    expect(() => findFences('page.md', 'text\n```ts\none();')).toThrow('page.md:2');
  });

  test('finds fences in the docstrings of functions, members and the file, without the stars', () => {
    const source = [
      '/**',
      ' * The file.',
      ' *',
      ' * ```ts',
      ' * first();',
      ' * ```',
      ' */',
      "export * from './a.js';",
      '',
      'export interface A {',
      '  /**',
      '   * ```ts',
      '   * if (a) {',
      '   *   second();',
      '   * }',
      '   * ```',
      '   */',
      '  readonly a: string;',
      '}',
    ].join('\n');
    expect(findFences('a.ts', source)).toEqual([
      { file: 'a.ts', line: 5, code: 'first();', runs: true },
      { file: 'a.ts', line: 13, code: 'if (a) {\n  second();\n}', runs: true },
    ]);
  });

  test('leaves fences in strings and in plain comments alone', () => {
    const source = `const text = \`\n/**\n * ${'\\`\\`\\`'}ts\n */\`;\n/*\n\`\`\`ts\none();\n\`\`\`\n*/\n`;
    expect(findFences('a.ts', source)).toEqual([]);
  });
});
