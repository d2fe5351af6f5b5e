/**
 * How well scores tell a true chart from a wrong one, on annotated solos, and whether they agree with a
 * teacher on made takes.
 *
 * Run from the root:
 * `npx tsx --tsconfig tsconfig.json packages/chord-tone/validity/report.ts SOLOS.ndjson > docs/scoring-validity.md`
 */
import { alarmTable } from './alarms.js';
import { batteryTable } from './battery-table.js';
import { halvesOf } from './halves.js';
import { introduction } from './introduction.js';
import { limits } from './limits.js';
import { readSolos } from './read-solos.js';
import { clashCount, scaleTable, silenceCount } from './scale.js';
import {
  chorusTable,
  contrastTable,
  lengthTable,
  losses,
  measureTable,
  playedTable,
} from './sections.js';

function main(path: string | undefined): void {
  if (path === undefined) {
    process.stderr.write(
      'Give the path of the solos. They come from the Weimar Jazz Database (The Jazzomat Research\n' +
        'Project, jazzomat.hfm-weimar.de), under the Open Database License 1.0.\n',
    );
    process.exitCode = 2;
    return;
  }
  const written = halvesOf(readSolos(path));
  const played = halvesOf(readSolos(path, 'played'));
  const parts = [
    introduction(written),
    contrastTable(written),
    chorusTable(written),
    playedTable(played),
    measureTable(written),
    lengthTable(written),
    scaleTable(written),
    clashCount(written),
    silenceCount(written),
    alarmTable(written),
    batteryTable(),
    losses(written),
    limits(written),
  ];
  process.stdout.write(`${parts.join('\n\n')}\n`);
}

main(process.argv[2]);
