import { type Breath, TEMPERAMENTS, tuneHarp } from '@reedplate/layout';
import type { Command } from 'commander';
import { examples } from '../../shared/examples.js';
import { type HarpWords, readHarp, withHarpOptions } from '../../shared/harp-options.js';
import { withJson } from '../../shared/options.js';
import { type Paint, printReport } from '../../shared/print.js';
import { readTemperamentWord } from '../../shared/read-temperament.js';
import { readList, readNumber } from '../../shared/read-words.js';
import { setColumns } from '../../shared/table.js';
import type { Terminal } from '../../terminal.js';
import { type TemperReport, type TuneReed, temperReport } from './report.js';

interface TemperWords extends HarpWords {
  readonly temperament: string;
  readonly a4: string;
  readonly holes?: string;
  readonly breath: string;
  readonly json: boolean;
}

/** Gives `reedplate temper` its options and what it does. */
export function setUpTemper(verb: Command, terminal: Terminal): void {
  const temperaments = TEMPERAMENTS.map(({ id }) => id).join(', ');
  withJson(withHarpOptions(verb))
    .option('--temperament <id>', `${temperaments}, or a Scala file`, 'equal')
    .option('--a4 <hertz>', 'frequency of A4', '440')
    .option('--holes <holes>', 'holes played together, apart by commas: 2,3,4,5')
    .option('--breath <breath>', 'breath they are played on: blow, draw', 'draw')
    .addHelpText(
      'after',
      examples(
        'reedplate temper --harp C --temperament seven-limit',
        'reedplate temper --harp A --a4 442 --holes 2,3,4',
      ),
    )
    .action((words: TemperWords) => {
      const harp = readHarp(words, terminal);
      const temperament = readTemperamentWord(words.temperament, terminal);
      const tuned = tuneHarp(harp, temperament, { a4: readNumber(words.a4, 'hertz') });
      const report = temperReport(tuned, {
        holes:
          words.holes === undefined
            ? []
            : readList(words.holes).map((hole) => readNumber(hole, 'a hole')),
        // A wrong breath is refused by chordTuning.
        breath: words.breath as Breath,
      });
      printReport(report, words, terminal, showTuning);
    });
}

function showTuning(report: TemperReport, paint: Paint): readonly string[] {
  const { key, tuning, temperament, a4, reeds, intervals } = report;
  const [head = '', ...body] = setColumns([
    ['hole', 'blow', 'cents', 'Hz', 'draw', 'cents', 'Hz'],
    ...pairs(reeds).map(([blow, draw]) => [`${blow.hole}`, ...cells(blow), ...cells(draw)]),
  ]);
  return [
    paint('heading', `${key} harp (${tuning}), ${temperament} from A4 = ${a4} Hz`),
    '',
    paint('heading', head),
    ...body,
    ...(intervals.length === 0 ? [] : ['', ...showIntervals(report, paint)]),
  ];
}

function showIntervals({ intervals }: TemperReport, paint: Paint): readonly string[] {
  const [head = '', ...body] = setColumns([
    ['holes', 'against', 'cents', 'off by', 'beats a second'],
    ...intervals.map(({ lower, upper, ratio, cents, deviation, beats }) => [
      `${lower}-${upper}`,
      ratio,
      cents.toFixed(1),
      signed(deviation),
      beats.toFixed(1),
    ]),
  ]);
  return [paint('heading', head), ...body];
}

/** Reeds come blow and draw in turn. */
function pairs(reeds: readonly TuneReed[]): readonly (readonly [TuneReed, TuneReed])[] {
  const draws = reeds.filter(({ breath }) => breath === 'draw');
  return reeds
    .filter(({ breath }) => breath === 'blow')
    .map((blow, index) => [blow, draws[index] ?? blow]);
}

function cells({ note, cents, frequency }: TuneReed): readonly string[] {
  return [note, signed(cents), frequency.toFixed(2)];
}

function signed(cents: number): string {
  return `${cents > 0 ? '+' : ''}${cents.toFixed(1)}`;
}
