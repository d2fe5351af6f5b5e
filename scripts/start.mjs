import { build } from './lib/build.mjs';
import { install } from './lib/install.mjs';
import { exitCodeOf } from './lib/run.mjs';
import { tool } from './lib/tools.mjs';

install();
build();

// The build's settings leave packages to node_modules, so the example runs what is published.
const tsx = ['--tsconfig', 'tsconfig.build.json', 'examples/first-blues/main.ts'];
try {
  tool('tsx', [...tsx, ...process.argv.slice(2)]);
} catch (error) {
  // The example itself has said what was wrong; only its exit code is left to pass on.
  process.exitCode = exitCodeOf(error);
}
