import { install } from './install.mjs';
import { pnpm } from './lib/tools.mjs';

/**
 * Builds every package whose content, or whose dependencies' content, has changed since it was
 * last built. pnpm runs turbo, so that turbo finds pnpm on a machine that has none.
 */
export function build() {
  pnpm(['exec', 'turbo', 'run', 'build', '--ui=stream', '--output-logs=errors-only']);
}

if (process.argv[1] === import.meta.filename) {
  install();
  build();
}
