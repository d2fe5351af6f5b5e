import { makeChart } from '@reedplate/form';
import { harpName } from '@reedplate/layout';
import { itemAt, parseKey } from '@reedplate/pitch';
import { planSetList, type SetListPlan, type SetListSong } from '@reedplate/position';
import type { Command } from 'commander';
import { type FormWords, varyNamedForm, withFormOptions } from '../../shared/chart-options.js';
import { examples } from '../../shared/examples.js';
import {
  type HarpChoiceWords,
  readHarpChoice,
  withHarpChoiceOptions,
} from '../../shared/harp-choice.js';
import { type LevelWords, readLevel, withLevel } from '../../shared/level-options.js';
import { withJsonOfHarps } from '../../shared/options.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { readFormWords } from '../../shared/read-form.js';
import { readNumber } from '../../shared/read-words.js';
import type { Terminal } from '../../terminal.js';

/** What `reedplate setlist --json` prints. */
export type SetlistAnswer = SetListPlan;

interface SetlistWords extends FormWords, HarpChoiceWords, LevelWords, PrintWords {
  readonly least: string;
}

/** Gives `reedplate setlist` its options and what it does. */
export function setUpSetlist(verb: Command, terminal: Terminal): void {
  withJsonOfHarps(withLevel(withHarpChoiceOptions(withFormOptions(verb))))
    .argument('<key...>', 'keys of the songs in order')
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
      const answer: SetlistAnswer = planSetList(songsOf(keys, words, terminal), {
        ...readHarpChoice(words, terminal),
        level: readLevel(words, terminal),
        leastShare: readNumber(words.least, 'a share'),
      });
      printAnswer(answer, words, terminal, showSetlist);
    });
}

/** One song a key, all of one form; chord names in it are read in the key of the first. */
function songsOf(
  names: readonly string[],
  words: FormWords,
  terminal: Terminal,
): readonly SetListSong[] {
  const keys = names.map((name) => parseKey(name));
  const form = readFormWords(words.form, { terminal, key: itemAt(keys, 0) });
  return keys.map((key) => ({
    key,
    chart: makeChart(varyNamedForm(form, key, words), key),
  }));
}

function showSetlist({ steps, changes }: SetlistAnswer, { table }: Page): readonly string[] {
  const rows = steps.map(({ index, title = `${index + 1}`, key, pick, changes: changed }) => [
    title,
    key,
    harpName(pick.harp),
    `${pick.position}`,
    `${Math.round(pick.weight * 100)} %`,
    changed ? 'change harp' : '',
  ]);
  const times = changes === 1 ? 'once' : `${changes} times`;
  return [
    ...table({ head: ['song', 'key', 'harp', 'position', 'suits', ''], rows }),
    '',
    `the harp changes ${times}`,
  ];
}
