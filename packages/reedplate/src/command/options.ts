import {
  type Chart,
  type Form,
  makeChart,
  toMinor,
  withSevenths,
  withTriads,
} from '@reedplate/form';
import { type Harp, makeHarp, REGISTERS, type Register } from '@reedplate/layout';
import { type Line, readMetre } from '@reedplate/line';
import { type Key, parseKey, requireOneOf } from '@reedplate/pitch';
import type { Command } from 'commander';
import { readFormWords } from './read-form.js';
import type { Terminal } from './terminal.js';

/** Kinds of chord that can be laid over a form. */
export const QUALITIES = ['as-written', 'triads', 'sevenths', 'minor'] as const;

/** Kind of chord laid over a form; see {@link QUALITIES}. */
export type Quality = (typeof QUALITIES)[number];

/** Words that name a chart. */
export interface ChartWords {
  readonly form: string;
  readonly key: string;
  readonly quality: string;
}

/** Words that name a harp. */
export interface HarpWords {
  readonly harp: string;
  readonly tuning: string;
  readonly register: string;
}

/** Adds `--form`, `--key` and `--quality`. */
export function withChartOptions(command: Command): Command {
  return command
    .requiredOption('--key <key>', 'key of the song: G, Bb, F#m …')
    .option(
      '--form <form>',
      'form the band plays: an id, a file, or bars such as "I7 | IV7"',
      'basic',
    )
    .option(
      '--quality <quality>',
      `chords laid over the form: ${QUALITIES.join(', ')}`,
      'as-written',
    );
}

/** Adds `--harp` (required), `--tuning` and `--register`. */
export function withHarpOptions(command: Command): Command {
  return command
    .requiredOption('--harp <key>', 'key printed on the harp: C, A, Bb …')
    .option('--tuning <tuning>', 'tuning of the harp', 'standard')
    .option('--register <register>', `register of the harp: ${REGISTERS.join(', ')}`, 'standard');
}

/** Adds `--json`. */
export function withJson(command: Command): Command {
  return command.option('--json', 'print the report as JSON', false);
}

/**
 * The chart that the words name. A minor key turns a major form into its minor, since that is what
 * a band means by "a blues in Gm".
 */
export function readChart(words: ChartWords, terminal: Pick<Terminal, 'readText'>): Chart {
  const key = parseKey(words.key);
  return makeChart(readVariedForm(words, terminal), { key });
}

const MOST_CHORUSES = 1000;

/** The chart that the words name, in the metre of a line and with as many choruses as the line has. */
export function readChartFor(
  line: Line,
  words: ChartWords,
  terminal: Pick<Terminal, 'readText'>,
): Chart {
  const form = readVariedForm(words, terminal);
  const { metre, pickup } = line;
  const lastOnset = line.notes.reduce((last, { start }) => Math.max(last, start), pickup);
  const chorusTicks = form.bars.length * readMetre(metre).barTicks;
  const choruses = Math.floor((lastOnset - pickup) / chorusTicks) + 1;
  return makeChart(form, {
    key: parseKey(words.key),
    metre,
    pickup,
    choruses: Math.min(choruses, MOST_CHORUSES),
  });
}

/** The form that the words name, with the kind of chord that they or the key ask for. */
export function readVariedForm(words: ChartWords, terminal: Pick<Terminal, 'readText'>): Form {
  const key = parseKey(words.key);
  return layQuality(readFormWords(words.form, { terminal, key }), key, words.quality);
}

function layQuality(form: Form, { mode }: Key, quality: string): Form {
  const wanted = requireOneOf(quality, QUALITIES, { what: 'a kind of chord' });
  if (wanted === 'triads') return withTriads(form);
  if (wanted === 'sevenths') return withSevenths(form);
  if (wanted === 'minor' || (mode === 'minor' && form.mode === 'major')) return toMinor(form);
  return form;
}

/** The harp that the words name; wrong words are refused by `makeHarp`. */
export function readHarp({ harp, tuning, register }: HarpWords): Harp {
  return makeHarp(parseKey(harp), { tuning, register: register as Register });
}
