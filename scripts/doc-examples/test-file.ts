import type { Fence } from './fences.js';
import { translate } from './translate.js';

/** The text of one test file that runs the given fences, a test for each. */
export function testFileOf(fences: readonly Fence[]): string {
  return [
    '// Generated from the documentation by scripts/generate-doc-tests.ts.',
    "import { test } from 'vitest';",
    "import { startExample } from '../../scripts/doc-examples/runtime.js';",
    ...fences.map(testOf),
    '',
  ].join('\n');
}

function testOf(fence: Fence): string {
  const place = `${fence.file}:${fence.line}`;
  const { body, markers } = translateAt(fence, place);
  const places = markers.map(({ firstLine, lastLine }) => ({
    firstLine: fence.line + firstLine,
    lastLine: fence.line + lastLine,
  }));
  return [
    `\ntest(${JSON.stringify(place)}, async () => {`,
    `const $example = startExample(${JSON.stringify(fence.file)}, ${JSON.stringify(places)});`,
    body,
    '$example.finish();',
    '});',
  ].join('\n');
}

function translateAt(fence: Fence, place: string) {
  try {
    return translate(fence.code);
  } catch (error) {
    throw new Error(`${place}: ${error instanceof Error ? error.message : error}`);
  }
}
