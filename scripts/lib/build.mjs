import { pnpm } from './tools.mjs';

/**
 * Builds every package whose content, or whose dependencies' content, has changed since it was
 * last built. pnpm runs turbo, so that turbo finds pnpm on a machine that has none.
 */
export function build() {
  pnpm(['exec', 'turbo', 'run', 'build', '--ui=stream', '--output-logs=errors-only']);
}
