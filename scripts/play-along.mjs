import { build as buildPage, createServer } from 'vite';
import { build } from './lib/build.mjs';
import { install } from './lib/install.mjs';
import { pageConfig } from './play-along/page-config.mjs';

// Serves the page to play along with, or, with the word `build`, writes it to a folder of files.

install();
build();

if (process.argv[2] === 'build') {
  await buildPage(pageConfig());
} else {
  const server = await createServer(pageConfig());
  await server.listen();
  server.printUrls();
}
