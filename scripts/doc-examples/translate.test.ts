import { ReedplateError } from '@reedplate/pitch';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { startExample } from './runtime.js';
import { translate } from './translate.js';

const AsyncFunction = (async () => undefined).constructor as FunctionConstructor;

const noNote = (): never => {
  throw new ReedplateError({ code: 'NOTE_UNKNOWN', value: 'H', expected: 'a note' });
};

/** Runs a fence as its generated test would. */
async function runFence(code: string): Promise<void> {
  const { body, markers } = translate(code);
  const example = startExample('page.md', markers);
  const script = ts.transpile(body, {
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.ESNext,
  });
  await AsyncFunction('$example', 'noNote', script)(example, noNote);
  example.finish();
}

describe('translate', () => {
  test.each([
    ['a number', '1 + 1; // => 2'],
    ['a negative number', '1 - 2; // => -1'],
    ['a string in either quotes', `'it' + "'s"; // => "it's"`],
    ['nested objects', `({ a: [{ b: { c: null } }] }); // => { a: [{ b: { c: null } }] }`],
    ['a word', '[][0]; // => undefined'],
    ['the value of a variable', 'const sum = 1 + 1; // => 2\nsum + 1; // => 3'],
    ['an awaited value', 'await Promise.resolve(3); // => 3'],
    ['a literal over several lines', '[1, 2]; // => [\n//   1,\n//   2,\n// ]'],
    ['a literal on the line below', 'const x = [1, 2];\n// => [1, 2]'],
    ['a statement over several lines', '[\n  1,\n  2,\n]; // => [1, 2]'],
    ['an error', 'noNote(); // throws NOTE_UNKNOWN'],
    ['an error in place of a value', 'const note = noNote(); // throws NOTE_UNKNOWN'],
    ['a rejection', 'await Promise.reject(0).catch(noNote); // throws NOTE_UNKNOWN'],
    ['claims within blocks', 'for (const n of [2]) {\n  n * 2; // => 4\n}'],
    ['claims in a branch without braces', 'if (1 < 2) 5; // => 5'],
    ['claims in a catch', 'try { noNote(); } catch (e) {\n  e.code; // => "NOTE_UNKNOWN"\n}'],
    ['other comments', '1; // one\n// two\n2; // => 2\n// three'],
    ['code without claims', 'const x = 1;'],
  ])('makes a test that passes of %s', async (_, code) => {
    await expect(runFence(code)).resolves.toBeUndefined();
  });

  test.each([
    ['a wrong number', '1 + 1; // => 3'],
    ['a wrong value deep inside', '({ a: [{ b: 1 }] }); // => { a: [{ b: 2 }] }'],
    ['a wrong value of a variable', 'const x = 1; // => 2'],
    ['a missing error', '1; // throws NOTE_UNKNOWN'],
    ['a missing rejection', 'await Promise.resolve(1); // throws NOTE_UNKNOWN'],
    ['an error with another code', 'noNote(); // throws KEY_UNKNOWN'],
    ['an error that is not ours', 'null.x; // throws NOTE_UNKNOWN'],
    ['an error nobody announced', 'noNote();'],
    ['a claim that is never reached', 'if (1 > 2) {\n  1; // => 1\n}'],
  ])('makes a test that fails of %s', async (_, code) => {
    await expect(runFence(code)).rejects.toThrow();
  });

  test.each([
    ['what is no literal', 'f(); // => g()', 'not a literal'],
    ['a name', 'f(); // => someName', 'not a literal'],
    ['an unfinished literal', 'f(); // => [1,', 'not a literal'],
    ['prose after a literal', 'f(); // => 60 as usual', 'not a literal'],
    ['a claim that no statement owns', '// => 1\nconst x = 1;', 'no statement owns'],
    ['a claim inside an expression', 'f(\n  1, // => 1\n);', 'no statement owns'],
    ['a code that is none', 'f(); // throws up', 'no statement owns'],
    ['a claim after a destructuring', 'const { a } = f(); // => 1', 'destructuring'],
    ['a claim after two variables', 'const a = 1, b = 2; // => 2', 'one variable'],
    ['an export', 'export const a = 1;\nexport { a };', 'cannot export'],
    ['broken code', 'const = 1;', 'expected'],
  ])('refuses %s', (_, code, message) => {
    expect(() => translate(code)).toThrow(message);
  });

  test('turns imports of values into dynamic ones and imports of types into aliases', () => {
    const body = (code: string) => translate(code).body;
    expect(body("import { a, b as c } from 'x';")).toBe("const { a, b: c } = await import('x');");
    expect(body("import * as x from 'x';")).toBe("const x = await import('x');");
    expect(body("import x, { a } from 'x';")).toBe("const { default: x, a } = await import('x');");
    expect(body("import type { T } from 'x';")).toBe("type T = import('x').T;");
    expect(body("import { a, type T as U } from 'x';")).toBe(
      "const { a } = await import('x'); type U = import('x').T;",
    );
    expect(body("import 'x';")).toBe("await import('x');");
  });

  test('keeps @ts-expect-error right above what it silences', () => {
    const { body } = translate(
      "// @ts-expect-error wrong on purpose\nf('H'); // throws NOTE_UNKNOWN",
    );
    expect(body).toMatch(/^\/\/ @ts-expect-error.*\n.*f\('H'\)/u);
  });
});
