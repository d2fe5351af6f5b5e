import {
  describeRecognition,
  type FormMatch,
  type FormRecognition,
  recogniseForm,
} from '@reedplate/form';
import { parseKey } from '@reedplate/pitch';
import type { Command } from 'commander';
import { examples } from '../../shared/examples.js';
import { isFileName } from '../../shared/file-words.js';
import { withJson } from '../../shared/options.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { sayDifference } from '../../shared/say-difference.js';
import type { Terminal } from '../../terminal.js';

/** What `reedplate recognise --json` prints. */
export type RecogniseAnswer = FormRecognition;

interface RecogniseWords extends PrintWords {
  readonly key?: string;
}

/** Gives `reedplate recognise` its options and what it does. */
export function setUpRecognise(verb: Command, terminal: Terminal): void {
  withJson(verb)
    .argument('<bars>', 'bars of chord names such as "G7 | C7 | G7", a file of them, or -')
    .option('--key <key>', 'key of the song, where it is known')
    .addHelpText(
      'after',
      examples(
        'reedplate recognise "G7 | C7 | G7 | % | C7 | % | G7 | % | D7 | C7 | G7 | D9"',
        'reedplate recognise tune.txt --key G',
      ),
    )
    .action((bars: string, { key, ...words }: RecogniseWords) => {
      const text = isFileName(bars) ? terminal.readText(bars) : bars;
      const options = key === undefined ? {} : { key: parseKey(key) };
      const answer: RecogniseAnswer = recogniseForm(text, options);
      printAnswer(answer, words, terminal, showRecognition);
    });
}

function showRecognition(recognition: RecogniseAnswer, page: Page): readonly string[] {
  const { best, others, near } = recognition;
  const { paint, table } = page;
  const rows = (near ? others : [...best, ...others]).map(sayMatch);
  return [
    paint('heading', describeRecognition(recognition)),
    sayConfidence(recognition),
    ...(near ? best.flatMap((match) => showDifferences(match, page)) : []),
    ...(others.length === 0 ? [] : ['', paint('heading', near ? 'next' : 'least far')]),
    ...(rows.length === 0 ? [] : table({ rows })),
  ];
}

function sayConfidence({ confidence, formConfidence, keyConfidence }: FormRecognition): string {
  const parts = `form ${formConfidence.toFixed(2)}, key ${keyConfidence.toFixed(2)}`;
  return `confidence ${confidence.toFixed(2)}: ${parts} (from 0, a tie, to 1: every bar agrees)`;
}

function showDifferences(match: FormMatch, { table }: Page): readonly string[] {
  if (match.differences.length === 0) return [];
  const rows = match.differences.map((difference) => {
    const [bar, played, expected, kind] = sayDifference(difference);
    return [bar, played, expected, difference.cost.toFixed(2), kind];
  });
  return ['', ...table({ head: ['bar', 'played', match.name, 'cost', ''], rows })];
}

function sayMatch({ name, closing, key, agreement }: FormMatch): readonly string[] {
  const ending = closing === null ? '' : ` ending in ${closing}`;
  return [`${name} in ${key}${ending}`, `${Math.round(agreement * 100)} %`];
}
