import { createRequire } from 'node:module';
import type { FoundExpression } from './gather.js';

// The checker's own program in JavaScript: no binary and no Java are asked for.
process.env.RECHECK_BACKEND = 'pure';
const { checkSync } = createRequire(import.meta.url)('recheck') as typeof import('recheck');

/** What the checker found of an expression. */
export interface CheckedExpression extends FoundExpression {
  readonly status: 'safe' | 'vulnerable' | 'unknown';
  /** Growth of time with the length of a text that it fits worst; why, where that is not known. */
  readonly reason: string;
}

/** Milliseconds for one expression: most take a few, on a machine that is busy with other things many more. */
const TIMEOUT = 600_000;

/** Whether a text can make an expression take time that grows faster than its length. */
export function checkExpression(found: FoundExpression): CheckedExpression {
  const { source, flags } = found;
  const result = checkSync(source, flags, { timeout: TIMEOUT, randomSeed: 1 });
  const reason = result.status === 'unknown' ? result.error.kind : result.complexity.summary;
  return { ...found, status: result.status, reason };
}
