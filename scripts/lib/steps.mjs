import { performance } from 'node:perf_hooks';

/** @typedef {readonly [name: string, work: () => unknown]} Step */

/**
 * Runs steps in turn, naming and timing each, and ends the process with exit code 1 at the first
 * that fails.
 *
 * @param {readonly Step[]} steps
 */
export async function runSteps(steps) {
  const started = performance.now();
  for (const [index, [name, work]] of steps.entries()) {
    console.log(`\n[${index + 1}/${steps.length}] ${name}`);
    const begun = performance.now();
    try {
      await work();
    } catch (error) {
      console.error(`\n[${index + 1}/${steps.length}] ${name}: failed after ${seconds(begun)}`);
      console.error(error instanceof Error ? error.message : error);
      process.exit(1);
    }
    console.log(`[${index + 1}/${steps.length}] ${name}: done in ${seconds(begun)}`);
  }
  console.log(`\n${steps.length} steps in ${seconds(started)}`);
}

/** @param {number} begun */
const seconds = (begun) => `${((performance.now() - begun) / 1000).toFixed(1)} s`;
