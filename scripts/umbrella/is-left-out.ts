import type { Exported } from '../lib/exports-of.js';
import { LEFT_OUT } from './left-out.js';

/** Whether a name that a package exports is not in the umbrella: it is internal, or left out on purpose. */
export function isLeftOut(
  dir: string,
  { name, isInternal }: Pick<Exported, 'name' | 'isInternal'>,
): boolean {
  return isInternal || (LEFT_OUT[dir] ?? []).includes(name);
}
