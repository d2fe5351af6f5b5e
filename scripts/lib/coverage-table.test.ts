import { describe, expect, test } from 'vitest';
import { coverageTable } from './coverage-table.mjs';

const share = (covered: number, total: number) => ({ covered, total });

describe('coverageTable', () => {
  test('adds the files of a package up, and leaves out the total and what is no package', () => {
    const summary = {
      total: { branches: share(9, 9), lines: share(9, 9) },
      '/house/packages/tab/src/parse.ts': { branches: share(9, 10), lines: share(3, 4) },
      '/house/packages/tab/src/deep/format.ts': { branches: share(9, 10), lines: share(4, 4) },
      '/house/packages/chord-tone/src/target.ts': { branches: share(3, 3), lines: share(5, 5) },
      '/house/scripts/lib/run.mjs': { branches: share(0, 5), lines: share(0, 5) },
    };
    expect(coverageTable(summary)).toEqual([
      'package     branches    lines',
      'chord-tone   100.0 %  100.0 %',
      'tab           90.0 %   87.5 %',
    ]);
  });

  test('cuts a share and does not round it up to a limit that it misses', () => {
    const summary = {
      '/house/packages/tab/src/a.ts': { branches: share(9496, 10000), lines: share(0, 0) },
    };
    expect(coverageTable(summary)[1]).toBe('tab        94.9 %     none');
  });
});
