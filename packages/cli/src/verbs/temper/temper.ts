import {
  type Breath,
  type ChordIntonation,
  chordIntonation,
  harpCaveats,
  nameOnHarp,
  TEMPERAMENTS,
  type TemperedHarp,
  type TemperedReed,
  temperHarp,
} from '@reedplate/layout';
import { itemAt, ReedplateError } from '@reedplate/pitch';
import type { Command } from 'commander';
import { examples } from '../../shared/examples.js';
import { type HarpWords, readHarp, withHarpOptions } from '../../shared/harp-options.js';
import { withJsonOfHarps } from '../../shared/options.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { readTemperamentWord } from '../../shared/read-temperament.js';
import { readList, readNumber } from '../../shared/read-words.js';
import { sayHarp } from '../../shared/say-harp.js';
import type { Terminal } from '../../terminal.js';

/** What `reedplate temper --json` prints: the reeds or, with `--holes`, the chord that they sound. */
export type TemperAnswer = TemperedHarp | ChordIntonation;

interface TemperWords extends HarpWords, PrintWords {
  readonly temperament: string;
  readonly a4: string;
  readonly holes?: string;
  readonly breath: string;
  readonly proportions?: string;
  readonly limit?: string;
}

/** Gives `reedplate temper` its options and what it does. */
export function setUpTemper(verb: Command, terminal: Terminal): void {
  const temperaments = TEMPERAMENTS.map(({ id }) => id).join(', ');
  withJsonOfHarps(withHarpOptions(verb))
    .option('--temperament <id>', `${temperaments}, or a Scala file`, 'equal')
    .option('--a4 <hertz>', 'frequency of A4', '440')
    .option('--holes <holes>', 'holes played together, apart by commas: 2,3,4,5')
    .option('--breath <breath>', 'breath they are played on: blow, draw', 'draw')
    .option('--proportions <numbers>', 'what they are meant to be, from the lowest up: 4:5:6:7')
    .option('--limit <prime>', 'largest prime of the ratios they are measured against (default: 7)')
    .addHelpText(
      'after',
      examples(
        'reedplate temper --harp C --temperament seven-limit',
        'reedplate temper --harp A --a4 442 --holes 2,3,4',
        'reedplate temper --harp C --temperament nineteen-limit --holes 4,5,6 --proportions 16:19:24',
      ),
    )
    .action((words: TemperWords) => {
      const harp = readHarp(words, terminal);
      const temperament = readTemperamentWord(words.temperament, terminal);
      const tuned = temperHarp(harp, temperament, { a4: readNumber(words.a4, 'hertz') });
      const chord = readChord(words, tuned);
      printAnswer<TemperAnswer>(chord ?? tuned, words, terminal, (_, page) => [
        ...showReeds(tuned, page),
        ...showCaveats(tuned, page),
        ...(chord === undefined ? [] : ['', ...showIntervals(chord, page)]),
        ...(chord === undefined || (words.proportions ?? words.limit) !== undefined
          ? []
          : ['', page.paint('aside', AGAINST)]),
      ]);
    });
}

/** How just the holes sound together that the words name; nothing without `--holes`. */
function readChord(words: TemperWords, tuned: TemperedHarp): ChordIntonation | undefined {
  const { holes, breath, proportions, limit } = words;
  if (holes === undefined) {
    if (proportions === undefined && limit === undefined) return undefined;
    const value = proportions === undefined ? '--limit' : '--proportions';
    throw new ReedplateError({
      code: 'USAGE',
      value,
      expected: '--holes, whose chord it measures',
    });
  }
  const numbers = readList(holes).map((hole) => readNumber(hole, 'a hole'));
  const parts = proportions?.split(':').map((part) => readNumber(part.trim(), 'a proportion'));
  // A wrong breath is refused by chordIntonation.
  return chordIntonation(tuned, numbers, breath as Breath, {
    ...(parts && { proportions: parts }),
    ...(limit !== undefined && { limit: readNumber(limit, 'a prime limit') }),
  });
}

/** Where the temperament does not hold on this layout, and what to mind about the harp. */
function showCaveats({ harp, impureFifths }: TemperedHarp, { paint }: Page): readonly string[] {
  const fifths = impureFifths.map(
    ({ breath, holes, deviation }) => `${breath} ${holes.join('-')} (${signed(deviation)} cents)`,
  );
  const lines = [
    ...(fifths.length === 0 ? [] : [`Fifths far from pure on this layout: ${fifths.join(', ')}.`]),
    ...harpCaveats(harp).map(({ text }) => text),
  ];
  return lines.length === 0 ? [] : ['', ...lines.map((line) => paint('warning', line))];
}

function showReeds(
  { harp, temperament, a4, reeds }: TemperedHarp,
  { paint, table }: Page,
): readonly string[] {
  const cells = ({ pitch, cents, frequency }: TemperedReed): readonly string[] => [
    nameOnHarp(harp, pitch),
    signed(cents),
    frequency.toFixed(2),
  ];
  const rows = pairs(reeds).map(([blow, draw]) => [`${blow.hole}`, ...cells(blow), ...cells(draw)]);
  return [
    paint('heading', `${sayHarp(harp)}, A4 = ${a4} Hz, ${nameOfTemperament(temperament)}`),
    '',
    ...table({ head: ['hole', 'blow', 'cents', 'Hz', 'draw', 'cents', 'Hz'], rows }),
  ];
}

/** The name of a temperament of the catalogue; the id of another. */
function nameOfTemperament(id: string): string {
  return TEMPERAMENTS.find((temperament) => temperament.id === id)?.name ?? id;
}

const AGAINST =
  'Each pair is measured against the simple ratio it is heard as. Say with --proportions what the whole chord is meant to be, or with --limit 19 that a just 19/16 is no narrow 6/5.';

function showIntervals({ reeds, intervals }: ChordIntonation, { table }: Page): readonly string[] {
  const rows = intervals.map(({ lower, upper, ratio, cents, deviation, beats }) => [
    `${reeds[lower]?.hole}-${reeds[upper]?.hole}`,
    `${ratio.numerator}/${ratio.denominator}`,
    cents.toFixed(1),
    signed(deviation),
    beats.toFixed(1),
  ]);
  return table({ head: ['holes', 'against', 'cents', 'off by', 'beats a second'], rows });
}

/** Reeds come blow and draw in turn. */
function pairs(reeds: readonly TemperedReed[]): readonly (readonly [TemperedReed, TemperedReed])[] {
  const draws = reeds.filter(({ breath }) => breath === 'draw');
  return reeds
    .filter(({ breath }) => breath === 'blow')
    .map((blow, index) => [blow, itemAt(draws, index)]);
}

/** To a tenth, without a negative zero. */
function signed(cents: number): string {
  const tenths = Math.round(cents * 10) / 10 + 0;
  return `${tenths > 0 ? '+' : ''}${tenths.toFixed(1)}`;
}
