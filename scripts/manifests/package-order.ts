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
  'backing',
  'practice',
  'listen',
  'picture',
  'files',
  'study',
  'cli',
  'reedplate',
];

/** The package that re-exports the others and brings the command. */
export const UMBRELLA = 'reedplate';

/** What needs Node: the umbrella leaves these out, since it runs in a browser too. */
export const NODE_PACKAGES: ReadonlySet<string> = new Set(['files', 'study', 'cli']);
