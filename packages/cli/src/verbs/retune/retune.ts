import {
  type Harp,
  makeHarp,
  nameOnHarp,
  type ReedRemedy,
  type RetuningPlan,
  retuningPlan,
  TEMPERAMENTS,
} from '@reedplate/layout';
import { parseKey } from '@reedplate/pitch';
import { harpKeyOf } from '@reedplate/position';
import type { Command } from 'commander';
import { count } from '../../shared/count.js';
import { examples } from '../../shared/examples.js';
import { withJsonOfHarps } from '../../shared/options.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { readTemperamentWord } from '../../shared/read-temperament.js';
import { readTuningWord, TUNING_WORD } from '../../shared/read-tuning.js';
import { readNumber } from '../../shared/read-words.js';
import { sayHarp } from '../../shared/say-harp.js';
import type { Terminal } from '../../terminal.js';

/** What `reedplate retune --json` prints: every reed, also those that stay as they are. */
export type RetuneAnswer = RetuningPlan;

interface RetuneWords extends PrintWords {
  readonly from: string;
  readonly to: string;
  readonly harp?: string;
  readonly temperament: string;
  readonly toTemperament?: string;
  readonly most: string;
}

/** Gives `reedplate retune` its options and what it does. */
export function setUpRetune(verb: Command, terminal: Terminal): void {
  const temperaments = TEMPERAMENTS.map(({ id }) => id).join(', ');
  withJsonOfHarps(verb)
    .option('--from <tuning>', `tuning the harp has: ${TUNING_WORD}`, 'standard')
    .requiredOption('--to <tuning>', `tuning it shall have: ${TUNING_WORD}`)
    .option('--harp <key>', 'key printed on the harp; without it the one its tuning is written in')
    .option('--temperament <id>', `how it is tempered: ${temperaments}, or a Scala file`, 'equal')
    .option('--to-temperament <id>', 'how it shall be tempered; without it as it is')
    .option('--most <cents>', 'cents that a reed bears before it is replaced', '200')
    .addHelpText(
      'after',
      examples(
        'reedplate retune --to natural-minor --harp C',
        'reedplate retune --from standard --to standard --to-temperament seven-limit',
      ),
    )
    .action((words: RetuneWords) => {
      const answer: RetuneAnswer = retuningPlan(...harpsOf(words, terminal), {
        fromTemperament: readTemperamentWord(words.temperament, terminal),
        toTemperament: readTemperamentWord(words.toTemperament ?? words.temperament, terminal),
        mostCents: readNumber(words.most, 'cents'),
      });
      printAnswer(answer, words, terminal, showPlan);
    });
}

/** The harp as it is, and the harp on the same first position that it shall be. */
function harpsOf({ from, to, harp }: RetuneWords, terminal: Terminal): readonly [Harp, Harp] {
  const had = readTuningWord(from, terminal);
  const wanted = readTuningWord(to, terminal);
  const before = makeHarp(harp === undefined ? had.label : parseKey(harp), { tuning: had });
  const label = harpKeyOf(before.firstPosition, 1, { tuning: wanted });
  return [before, makeHarp(label, { tuning: wanted })];
}

const SAY_REMEDY: Readonly<Record<ReedRemedy, string>> = {
  leave: 'leave',
  'file-tip': 'thin the tip',
  'file-base': 'thin the base',
  'weight-tip': 'add weight at the tip',
  replace: 'replace the reed',
};

function showPlan(
  { from, to, steps, cautions }: RetuneAnswer,
  { paint, table }: Page,
): readonly string[] {
  const worked = steps.filter(({ remedy }) => remedy !== 'leave');
  const rows = worked.map((step) => [
    `${step.hole}`,
    step.breath,
    nameOnHarp(from, step.from),
    nameOnHarp(to, step.to),
    sayCents(step.cents),
    SAY_REMEDY[step.remedy],
  ]);
  const left = count(steps.length - worked.length, 'reed');
  return [
    paint('heading', `from ${sayHarp(from)} to ${sayHarp(to)}`),
    '',
    ...(rows.length === 0 ? ['nothing to do'] : table({ head: HEAD, rows })),
    paint('aside', `left as before: ${left}`),
    ...(cautions.length === 0 ? [] : ['', 'Mind:']),
    ...cautions.map((caution) => `  - ${caution}`),
  ];
}

const HEAD = ['hole', 'reed', 'from', 'to', 'cents', 'how'];

/** Cents up or down, to a tenth. */
function sayCents(cents: number): string {
  const tenths = Math.round(cents * 10) / 10;
  return `${tenths > 0 ? '+' : ''}${tenths}`;
}
