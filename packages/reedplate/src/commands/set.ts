import { TECHNIQUE_LEVELS, type TechniqueLevel } from '@reedplate/layout';
import { parseKey } from '@reedplate/pitch';
import type { Command } from 'commander';
import { examples } from '../command/examples.js';
import { OWN_HARPS, readOwnHarps } from '../command/harp-options.js';
import { withJson } from '../command/options.js';
import { type Paint, printReport } from '../command/print.js';
import { readNumber } from '../command/read-words.js';
import { setColumns } from '../command/table.js';
import type { Terminal } from '../command/terminal.js';
import { type SetReport, setReport } from '../reports/set.js';

interface SetWords {
  readonly own?: string;
  readonly level: string;
  readonly least: string;
  readonly json: boolean;
}

/** Adds `reedplate set`. */
export function addSet(program: Command, terminal: Terminal): void {
  withJson(program.command('set'))
    .argument('<key...>', 'keys of the songs in order')
    .description('harps for a set of songs, with the fewest changes of harp')
    .option('--own <harps>', OWN_HARPS)
    .option('--level <level>', `what the player can do: ${TECHNIQUE_LEVELS.join(', ')}`, 'bends')
    .option(
      '--least <share>',
      'how good a harp must be against the best for a song, 0 to 1',
      '0.85',
    )
    .addHelpText('after', examples('reedplate set G C Am D', 'reedplate set G C A --own C,D,G'))
    .action((keys: readonly string[], words: SetWords) => {
      const songs = keys.map((key) => ({ key: parseKey(key) }));
      const report = setReport(songs, {
        // A wrong level is refused by planSet.
        level: words.level as TechniqueLevel,
        leastShare: readNumber(words.least, 'a share'),
        ...(words.own === undefined ? {} : { own: readOwnHarps(words.own, terminal) }),
      });
      printReport(report, words, terminal, showSet);
    });
}

function showSet({ songs, changes }: SetReport, paint: Paint): readonly string[] {
  const [head = '', ...body] = setColumns([
    ['song', 'key', 'harp', 'position', 'suits', ''],
    ...songs.map((song) => [
      song.title,
      song.key,
      song.harp,
      `${song.position}`,
      `${Math.round(song.weight * 100)} %`,
      song.changes ? 'change harp' : '',
    ]),
  ]);
  const times = changes === 1 ? 'once' : `${changes} times`;
  return [paint('heading', head), ...body, '', `the harp changes ${times}`];
}
