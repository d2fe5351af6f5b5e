import { describe, expect, test } from 'vitest';
import { testFileOf } from './test-file.js';
import { traceMessage } from './trace.js';

describe('traceMessage', () => {
  const code = "import { a } from 'a';\nconst b = a; // => [\n//   1,\n// ]\nwrong();";
  const fences = [
    { file: 'packages/a/README.md', line: 7, code: 'first();', runs: true },
    { file: 'docs/a.md', line: 20, code, runs: true },
  ];
  const lines = testFileOf(fences).split('\n');
  const trace = (text: string): string => {
    const line = lines.findIndex((generated) => generated.startsWith(text)) + 1;
    return traceMessage(`test/generated/a.test.ts(${line},1): error`, () => lines);
  };

  test('points a message at the line of the page that the fence stands on', () => {
    expect(trace('first();')).toMatch(/^packages\/a\/README\.md:7: test/u);
    expect(trace('const { a }')).toMatch(/^docs\/a\.md:20: test/u);
    expect(trace('wrong();')).toMatch(/^docs\/a\.md:24: test/u);
  });

  test('leaves a message about any other file as it is', () => {
    expect(traceMessage('packages/a/src/a.ts(1,1): error', () => [])).toBe(
      'packages/a/src/a.ts(1,1): error',
    );
  });
});
