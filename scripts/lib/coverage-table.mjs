/** @typedef {{ readonly covered: number, readonly total: number }} Share */
/** @typedef {{ readonly branches: Share, readonly lines: Share }} FileCoverage */

/**
 * The share of branches and lines that tests take, in each package, as lines of text, from the summary that
 * a whole run leaves (`coverage/coverage-summary.json`). The limits stand in `vitest.config.ts`.
 *
 * @param {Readonly<Record<string, FileCoverage>>} summary
 * @returns {readonly string[]}
 */
export function coverageTable(summary) {
  /** @type {Map<string, { branches: Share, lines: Share }>} */
  const packages = new Map();
  for (const [file, { branches, lines }] of Object.entries(summary)) {
    const name = /\/packages\/([^/]+)\/src\//u.exec(file)?.[1];
    if (name === undefined) continue;
    const sum = packages.get(name) ?? { branches: NONE, lines: NONE };
    packages.set(name, { branches: plus(sum.branches, branches), lines: plus(sum.lines, lines) });
  }
  const rows = [...packages].sort(([a], [b]) => (a < b ? -1 : 1));
  const width = Math.max('package'.length, ...rows.map(([name]) => name.length));
  return [
    `${'package'.padEnd(width)}  branches    lines`,
    ...rows.map(
      ([name, { branches, lines }]) =>
        `${name.padEnd(width)}  ${percent(branches).padStart(8)} ${percent(lines).padStart(8)}`,
    ),
  ];
}

const NONE = { covered: 0, total: 0 };

/**
 * @param {Share} a
 * @param {Share} b
 */
const plus = (a, b) => ({ covered: a.covered + b.covered, total: a.total + b.total });

/**
 * Cut, not rounded: what is below a limit does not read as if it were there.
 *
 * @param {Share} share
 */
const percent = ({ covered, total }) =>
  total === 0 ? 'none' : `${(Math.floor((covered / total) * 1000) / 10).toFixed(1)} %`;
