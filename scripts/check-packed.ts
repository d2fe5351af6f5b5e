import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { makeConsumer, makeLoneConsumer } from './packed/consumer.js';
import { wrongFiles } from './packed/expect-files.js';
import { inspect } from './packed/inspect.js';
import { packAll } from './packed/pack.js';
import { INSTALLERS, MANAGERS, tryRunning, tryTypes } from './packed/try-consumer.js';

// Packs what would be published and uses it as a stranger would, in an empty folder.
const folder = mkdtempSync(join(tmpdir(), 'reedplate-packed-'));
try {
  const packed = packAll(join(folder, 'tarballs'));
  const wrong = packed.flatMap(wrongFiles);
  if (wrong.length > 0) throw new Error(wrong.join('\n'));
  for (const one of packed) inspect(one);
  for (const [name, install] of Object.entries(INSTALLERS)) {
    console.log(`\ninstalled by ${name}:`);
    const consumer = join(folder, name);
    makeConsumer(consumer, packed);
    install(consumer);
    tryRunning(consumer);
    tryTypes(consumer);
  }
  for (const [name, { install, node }] of Object.entries(MANAGERS)) {
    console.log(`\nreedplate alone, installed by ${name}:`);
    const consumer = join(folder, `alone-${name}`);
    makeLoneConsumer(consumer, packed);
    install(consumer);
    node(consumer, 'alone.mjs');
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
