import { ROOT } from '../lib/root.mjs';

const PAGE = `${ROOT}examples/play-along`;

/**
 * How Vite builds the page.
 *
 * @param {{ outDir?: string, fromSource?: boolean }} [options] where it is written, and whether packages are
 * taken from their source instead of what was built of them, as tests do
 * @returns {import('vite').InlineConfig}
 */
export function pageConfig({ outDir = `${PAGE}/dist`, fromSource = false } = {}) {
  const alias = fromSource
    ? [{ find: /^@reedplate\/([a-z-]+)$/, replacement: `${ROOT}packages/$1/src/index.ts` }]
    : [];
  return {
    configFile: false,
    root: PAGE,
    // So that the folder may lie anywhere.
    base: './',
    logLevel: fromSource ? 'error' : 'info',
    resolve: { alias },
    // Every file is a file: a picture within a script is a request that a strict server refuses.
    build: { outDir, emptyOutDir: true, assetsInlineLimit: 0, target: 'es2022' },
    worker: { format: 'es' },
  };
}
