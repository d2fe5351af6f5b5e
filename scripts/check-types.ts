import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { traceMessage } from './doc-examples/trace.js';
import { ROOT } from './lib/root.mjs';

// Type-checks source, tests, examples and scripts, the examples of the documentation included.
const tsc = `${ROOT}node_modules/.bin/tsc`;
// A page is checked by itself: what runs in a browser knows no Node.
const runs = ['tsconfig.json', 'examples/play-along/tsconfig.json'].map((project) =>
  spawnSync(tsc, ['-p', project, '--pretty', 'false'], { cwd: ROOT, encoding: 'utf8' }),
);
const stdout = runs.map((run) => run.stdout).join('\n');
const readLines = (file: string): string[] => readFileSync(ROOT + file, 'utf8').split('\n');
const messages = stdout.split('\n').filter((line) => line !== '');
for (const message of messages) console.error(traceMessage(message, readLines));
process.exitCode = runs.every(({ status }) => status === 0) ? 0 : 1;
