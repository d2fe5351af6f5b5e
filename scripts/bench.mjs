import { existsSync, readdirSync } from 'node:fs';
import { build } from './lib/build.mjs';
import { install } from './lib/install.mjs';
import { workspacePackages } from './lib/packages.mjs';
import { tool } from './lib/tools.mjs';

// Runs the benchmarks of every package, or of the packages named, against what is built.
const wanted = process.argv.slice(2);

install();
build();
for (const { dir, path } of workspacePackages()) {
  if (wanted.length > 0 && !wanted.includes(dir)) continue;
  const files = existsSync(`${path}/bench`) ? readdirSync(`${path}/bench`).sort() : [];
  for (const file of files.filter((name) => name.endsWith('.bench.ts'))) {
    console.log(`\n${dir}/bench/${file}`);
    tool('tsx', ['--tsconfig', 'tsconfig.build.json', `packages/${dir}/bench/${file}`]);
  }
}
