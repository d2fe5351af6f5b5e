import { pathToFileURL } from 'node:url';
import { workspacePackages } from '../lib/packages.mjs';
import type { FoundExpression } from './gather.js';

/**
 * The expressions that the packages make of text when they are loaded: literals never call the
 * constructor, so what calls it is one of them.
 */
export async function madeExpressions(root: string): Promise<readonly FoundExpression[]> {
  const made: FoundExpression[] = [];
  const original = globalThis.RegExp;
  globalThis.RegExp = new Proxy(original, {
    construct: (target, [source, flags]: [string, string?]) => {
      const place = callerIn(root);
      if (place !== undefined) made.push({ source, flags: flags ?? '', place });
      return new target(source, flags);
    },
  });
  try {
    for (const { path } of workspacePackages()) {
      await import(pathToFileURL(`${path}/src/index.ts`).href);
    }
  } finally {
    globalThis.RegExp = original;
  }
  return made;
}

/** The first source file of a package on the stack, as a path from the root. */
function callerIn(root: string): string | undefined {
  const lines = (new Error('where').stack ?? '').split('\n');
  for (const line of lines) {
    const at = line.indexOf(`${root}packages/`);
    const end = line.indexOf('.ts', at);
    if (at >= 0 && end >= 0) return line.slice(at + root.length, end + 3);
  }
  return undefined;
}
