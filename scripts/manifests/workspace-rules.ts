import type { PackageFacts } from './facts.js';
import { nameOf } from './manifest-rules.js';
import { NODE_PACKAGES, UMBRELLA } from './package-order.js';

/** What is wrong between packages: versions that differ, a package the umbrella leaves out. */
export function workspaceComplaints(packages: readonly PackageFacts[]): readonly string[] {
  const versions = new Set(packages.map(({ manifest }) => manifest.version));
  const umbrella = packages.find(({ dir }) => dir === UMBRELLA);
  const reExported = umbrella?.sources.find(({ file }) => file === 'src/index.ts')?.imports ?? [];
  return [
    ...(versions.size > 1 ? [`packages differ in version: ${[...versions].join(', ')}`] : []),
    ...packages
      .filter(({ dir }) => dir !== UMBRELLA && !NODE_PACKAGES.has(dir))
      .filter(({ dir }) => !reExported.includes(nameOf(dir)))
      .map(({ dir }) => `${UMBRELLA} does not re-export ${nameOf(dir)}`),
  ];
}
