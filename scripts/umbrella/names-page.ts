import { exportsOfPackages, type PackageExports } from '../lib/exports-of.js';
import { NODE_PACKAGES, UMBRELLA } from '../manifests/package-order.js';
import { isLeftOut } from './is-left-out.js';

/** Most names of the umbrella: what a person can still look through, and ten that came with listening. */
export const MOST_NAMES = 320 + 10;

const HEAD = `# Names

<!-- Written by \`npm run names\`. -->

All that \`reedplate\` exports, by the package that it comes from: functions and tables first, types after
them. What a word in these names means stands in the [glossary](glossary.md). A package exports some more:
the types of parts and options, which an indexed access such as \`Score['timing']\` or
\`Parameters<typeof makeHarp>[1]\` gives as well, and the tables that its figures rest on.
`;

/** The page of names, and how many it has. */
export function namesPage(packages: readonly PackageExports[] = exportsOfPackages()): {
  readonly page: string;
  readonly count: number;
} {
  const rooms = packages
    .filter(({ dir }) => dir !== UMBRELLA && !NODE_PACKAGES.has(dir))
    .map(({ name, dir, exports }) => ({
      name,
      exports: exports.filter((found) => !isLeftOut(dir, found)),
    }));
  const count = rooms.reduce((sum, { exports }) => sum + exports.length, 0);
  const sections = rooms.map(
    ({ name, exports }) => `## ${name}\n\n${sectionOf(exports).join('\n')}\n`,
  );
  return { page: [`${HEAD}\n${count} names.\n`, ...sections].join('\n'), count };
}

function sectionOf(exports: PackageExports['exports']): readonly string[] {
  const lines = (isType: boolean): readonly string[] =>
    exports
      .filter((found) => found.isType === isType)
      .map(({ name, summary }) => `- \`${name}\`: ${summary}`)
      .sort();
  return [...lines(false), ...lines(true)];
}
