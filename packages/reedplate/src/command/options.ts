import {
  type Chart,
  type Form,
  formById,
  makeChart,
  toMinor,
  withSevenths,
  withTriads,
} from '@reedplate/form';
import { type Harp, makeHarp, type Register } from '@reedplate/layout';
import { type Key, parseKey, requireInteger, requireOneOf } from '@reedplate/pitch';
import type { Command } from 'commander';

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
    .option('--form <form>', 'form the band plays', 'basic')
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
    .option('--register <register>', 'register of the harp: low, standard, high', 'standard');
}

/** Adds `--json`. */
export function withJson(command: Command): Command {
  return command.option('--json', 'print the report as JSON', false);
}

/**
 * The chart that the words name. A minor key turns a major form into its minor, since that is what
 * a band means by "a blues in Gm".
 */
export function readChart({ form, key, quality }: ChartWords): Chart {
  const songKey = parseKey(key);
  return makeChart(layQuality(formById(form), songKey, quality), { key: songKey });
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
  return makeHarp(harp, { tuning, register: register as Register });
}

/**
 * A whole number that a word names, within bounds, both inclusive.
 *
 * @throws ReedplateError `NUMBER_RANGE` with the word as it was typed
 */
export function readWholeNumber(
  word: string,
  bounds: { readonly min: number; readonly max: number; readonly what: string },
): number {
  return requireInteger(/^\d{1,15}$/u.test(word) ? Number(word) : word, bounds);
}
