import { performance } from 'node:perf_hooks';

/** @typedef {readonly [name: string, work: () => unknown]} Step */

/**
 * Runs steps in turn, naming and timing each, until one fails.
 *
 * @param {readonly Step[]} steps
 * @returns {Promise<boolean>} whether all passed
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
      return false;
    }
    console.log(`[${index + 1}/${steps.length}] ${name}: done in ${seconds(begun)}`);
  }
  console.log(`\n${steps.length} steps in ${seconds(started)}`);
  return true;
}

/** @param {number} begun */
const seconds = (begun) => `${((performance.now() - begun) / 1000).toFixed(1)} s`;
