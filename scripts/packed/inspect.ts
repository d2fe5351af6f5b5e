import { tool } from '../lib/tools.mjs';
import type { Packed } from './pack.js';

/** Lets publint and arethetypeswrong look for faults in a tarball, for every module resolution. */
export function inspect({ name, tarball }: Packed): void {
  tool('publint', ['run', tarball, '--strict'], { capture: true });
  tool('attw', [tarball, '--format', 'ascii', '--no-emoji', '--no-definitely-typed'], {
    capture: true,
  });
  console.log(`${name}: publint and arethetypeswrong find nothing`);
}
