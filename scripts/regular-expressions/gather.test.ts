import { describe, expect, test } from 'vitest';
import { gatherExpressions } from './gather.js';

describe('gatherExpressions', () => {
  test('gatherExpressions finds literals with flags and lines, not what only looks like one', () => {
    const text =
      "const half = 4 / 2 / 1;\n// /no/u\nconst a = '/no/u';\nconst b = [/[/]x/u, /y/gs];\n";
    expect(gatherExpressions('a.ts', text).literals).toEqual([
      { source: '[/]x', flags: 'u', place: 'a.ts:4' },
      { source: 'y', flags: 'gs', place: 'a.ts:4' },
    ]);
  });

  test('gatherExpressions says where an expression is made of text', () => {
    const text = 'const a = new RegExp(x);\nconst b = RegExp("y");\nconst c = new Map();';
    expect(gatherExpressions('a.ts', text).made).toEqual(['a.ts:1', 'a.ts:2']);
  });
});
