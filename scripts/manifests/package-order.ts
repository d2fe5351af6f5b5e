/**
 * The packages from the ground up, by folder. A package may depend only on those before it, so
 * that the arrows between packages point downward and never form a cycle.
 */
export const PACKAGE_ORDER: readonly string[] = [
  'pitch',
  'line',
  'form',
  'layout',
  'position',
  'tab',
  'chord-tone',
  'playability',
  'interchange',
  'picture',
  'lesson',
  'reedplate',
];

/** The package that re-exports the others and brings the command. */
export const UMBRELLA = 'reedplate';

/** What a program imports by its own name: readers of files, which most programs would load in vain. */
export const IMPORTED_APART: ReadonlySet<string> = new Set(['interchange']);
