import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { makeConsumer } from './packed/consumer.js';
import { inspect } from './packed/inspect.js';
import { packAll } from './packed/pack.js';
import { INSTALLERS, tryRunning, tryTypes } from './packed/try-consumer.js';

// Packs what would be published and uses it as a stranger would, in an empty folder.
const folder = mkdtempSync(join(tmpdir(), 'reedplate-packed-'));
try {
  const packed = packAll(join(folder, 'tarballs'));
  for (const one of packed) inspect(one);
  for (const [name, install] of Object.entries(INSTALLERS)) {
    console.log(`\ninstalled by ${name}:`);
    const consumer = join(folder, name);
    makeConsumer(consumer, packed);
    install(consumer);
    tryRunning(consumer);
    tryTypes(consumer);
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
