import { makeChart } from '@reedplate/form';
import { TECHNIQUE_LEVELS, type TechniqueLevel } from '@reedplate/layout';
import { parseKey } from '@reedplate/pitch';
import type { SetSong } from '@reedplate/position';
import type { Command } from 'commander';
import { type FormWords, varyNamedForm, withFormOptions } from '../../shared/chart-options.js';
import { examples } from '../../shared/examples.js';
import {
  type HarpChoiceWords,
  readHarpChoice,
  withHarpChoiceOptions,
} from '../../shared/harp-choice.js';
import { withJson } from '../../shared/options.js';
import { type Paint, printReport } from '../../shared/print.js';
import { readFormWords } from '../../shared/read-form.js';
import { readNumber } from '../../shared/read-words.js';
import { setColumns } from '../../shared/table.js';
import type { Terminal } from '../../terminal.js';
import { type SetlistReport, setlistReport } from './report.js';

interface SetlistWords extends FormWords, HarpChoiceWords {
  readonly level: string;
  readonly least: string;
  readonly json: boolean;
}

/** Gives `reedplate setlist` its options and what it does. */
export function setUpSetlist(verb: Command, terminal: Terminal): void {
  withJson(withHarpChoiceOptions(withFormOptions(verb)))
    .argument('<key...>', 'keys of the songs in order')
    .option('--level <level>', `what the player can do: ${TECHNIQUE_LEVELS.join(', ')}`, 'bends')
    .option(
      '--least <share>',
      'how good a harp must be against the best for a song, 0 to 1',
      '0.85',
    )
    .addHelpText(
      'after',
      examples('reedplate setlist G C Am D', 'reedplate setlist G C A --own C,D,G'),
    )
    .action((keys: readonly string[], words: SetlistWords) => {
      const report = setlistReport(songsOf(keys, words, terminal), {
        ...readHarpChoice(words, terminal),
        // A wrong level is refused by planSet.
        level: words.level as TechniqueLevel,
        leastShare: readNumber(words.least, 'a share'),
      });
      printReport(report, words, terminal, showSetlist);
    });
}

/** One song a key, all of one form; chord names in it are read in the key of the first. */
function songsOf(
  names: readonly string[],
  words: FormWords,
  terminal: Terminal,
): readonly SetSong[] {
  const [first, ...others] = names.map((name) => parseKey(name));
  if (first === undefined) return [];
  const form = readFormWords(words.form, { terminal, key: first });
  return [first, ...others].map((key) => ({
    key,
    chart: makeChart(varyNamedForm(form, key, words), key),
  }));
}

function showSetlist({ songs, changes }: SetlistReport, paint: Paint): readonly string[] {
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
