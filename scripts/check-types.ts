import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { traceMessage } from './doc-examples/trace.js';
import { ROOT } from './lib/root.mjs';

// Type-checks source, tests, examples and scripts, the examples of the documentation included.
const tsc = `${ROOT}node_modules/.bin/tsc`;
const { status, stdout } = spawnSync(tsc, ['-p', 'tsconfig.json', '--pretty', 'false'], {
  cwd: ROOT,
  encoding: 'utf8',
});
const readLines = (file: string): string[] => readFileSync(ROOT + file, 'utf8').split('\n');
const messages = stdout.split('\n').filter((line) => line !== '');
for (const message of messages) console.error(traceMessage(message, readLines));
process.exitCode = status ?? 1;
