import type { BarDifference, FormMatch } from '@reedplate/form';
import { parseKey } from '@reedplate/pitch';
import type { Command } from 'commander';
import { examples } from '../../shared/examples.js';
import { isFileName } from '../../shared/file-words.js';
import { withJson } from '../../shared/options.js';
import { type Paint, printReport } from '../../shared/print.js';
import { setColumns } from '../../shared/table.js';
import type { Terminal } from '../../terminal.js';
import { type RecogniseReport, recogniseReport } from './report.js';

interface RecogniseWords {
  readonly key?: string;
  readonly json: boolean;
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
      printReport(recogniseReport(text, options), words, terminal, showRecognition);
    });
}

function showRecognition(report: RecogniseReport, paint: Paint): readonly string[] {
  const { best, others, verdict, near } = report;
  return [
    paint('heading', verdict),
    sayConfidence(report),
    ...(near ? best.flatMap((match) => showDifferences(match, paint)) : []),
    ...(others.length === 0 ? [] : ['', paint('heading', near ? 'next' : 'least far')]),
    ...setColumns((near ? others : [...best, ...others]).map(sayMatch)),
  ];
}

function sayConfidence({ confidence, formConfidence, keyConfidence }: RecogniseReport): string {
  const parts = `form ${formConfidence.toFixed(2)}, key ${keyConfidence.toFixed(2)}`;
  return `confidence ${confidence.toFixed(2)}: ${parts} (from 0, a tie, to 1: every bar agrees)`;
}

function showDifferences(match: FormMatch, paint: Paint): readonly string[] {
  if (match.differences.length === 0) return [];
  const rows = match.differences.map(sayDifference);
  const [head = '', ...body] = setColumns([['bar', 'played', match.form, 'cost', ''], ...rows]);
  return ['', paint('heading', head), ...body];
}

function sayDifference(difference: BarDifference): readonly string[] {
  const { bar, barOfForm, given, expected, cost, kind } = difference;
  return [
    `${bar ?? `(${barOfForm})`}`,
    given ?? '(none)',
    expected ?? '(none)',
    cost.toFixed(2),
    KINDS[kind],
  ];
}

const KINDS: Readonly<Record<BarDifference['kind'], string>> = {
  root: 'another chord',
  quality: 'another kind of chord',
  extra: 'a bar too many',
  missing: 'a bar left out',
};

function sayMatch({ form, closing, key, agreement }: FormMatch): readonly string[] {
  const ending = closing === null ? '' : ` ending in ${closing}`;
  return [`${form} in ${key}${ending}`, `${Math.round(agreement * 100)} %`];
}
