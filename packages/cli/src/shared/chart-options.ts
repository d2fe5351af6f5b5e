import {
  type Chart,
  type ChartOptions,
  type EndingId,
  FEELS,
  type Feel,
  type Form,
  INTRO_KINDS,
  type IntroKind,
  makeChart,
  type TurnaroundId,
  toMinor,
  VARIATIONS,
  type Variation,
  varyForm,
  withTurnaround,
} from '@reedplate/form';
import type { Metre } from '@reedplate/line';
import { type Key, parseKey } from '@reedplate/pitch';
import type { Command } from 'commander';
import type { Terminal } from '../terminal.js';
import { withOptionGroup } from './option-group.js';
import { readFormWords } from './read-form.js';
import { readList, readWholeNumber } from './read-words.js';

/** Words that name a form and how it is varied. */
export interface FormWords {
  readonly form: string;
  readonly vary?: string;
  readonly turnaround?: string;
}

/** Words that name what stands before the first chorus and ends the last. */
export interface FrameWords {
  readonly intro?: string;
  readonly ending?: string;
}

/** Words that name a chart. */
export interface ChartWords extends FormWords, FrameWords {
  readonly key: string;
  readonly choruses: string;
  readonly metre?: string;
  readonly feel?: string;
}

type Reader = Pick<Terminal, 'readText'>;

const GROUP = 'Song:';
const KEY = '--key <key>';
const KEY_OF_SONG = 'key of the song: G, Bb, F#m …';

/** Adds `--key`, `--form` and all that makes a chart of it; every verb that plans one has these. */
export function withChartOptions(command: Command, { choruses = '1' } = {}): Command {
  return withOptionGroup(command, GROUP, (group) =>
    withFrame(withForm(group.requiredOption(KEY, KEY_OF_SONG), 'basic'))
      .option('--choruses <number>', 'times through the form', choruses)
      .option('--metre <metre>', 'time signature such as 4/4 or 12/8; without it that of the form')
      .option(
        '--feel <feel>',
        `how the beat is felt: ${FEELS.join(', ')}; without it as the form is`,
      ),
  );
}

/** Adds the options of a chart for a line, which says itself its metre and how long it is. */
export function withChartForLineOptions(command: Command): Command {
  return withOptionGroup(command, GROUP, (group) =>
    withFrame(withForm(group.requiredOption(KEY, KEY_OF_SONG), 'basic')),
  );
}

/** Adds the options of a chart for a line that may do without one. */
export function withMaybeChartForLineOptions(command: Command): Command {
  return withOptionGroup(command, GROUP, (group) =>
    withFrame(withForm(group.option(KEY, 'key of the song, in place of the one read'))),
  );
}

/** Adds the form alone, for verbs to which the key comes otherwise. */
export function withFormOptions(command: Command): Command {
  return withOptionGroup(command, GROUP, (group) => withForm(group, 'basic'));
}

function withForm(command: Command, form?: string): Command {
  return command
    .option('--form <form>', 'form the band plays: an id, a file, or bars such as "I7 | IV7"', form)
    .option('--vary <names>', `variations apart by commas: ${VARIATIONS.join(', ')}`)
    .option(
      '--turnaround <id>',
      'last two bars of every chorus, by an id that reedplate forms lists',
    );
}

function withFrame(command: Command): Command {
  return command
    .option('--intro <from>', `bars before the first chorus: ${INTRO_KINDS.join(', ')}`)
    .option(
      '--ending <id>',
      'last two bars of the last chorus, by an id that reedplate forms lists',
    );
}

/** As many choruses as any band plays, and more. */
export const MOST_CHORUSES = 1000;

/** The chart that the words name. */
export function readChart(
  words: ChartWords,
  terminal: Reader,
  options: Pick<ChartOptions, 'tempo'> = {},
): Chart {
  const { metre, feel } = words;
  const key = parseKey(words.key);
  return makeChart(readVariedForm(words, key, terminal), key, {
    ...options,
    ...readFrame(words),
    choruses: readWholeNumber(words.choruses, { min: 1, max: MOST_CHORUSES, what: 'choruses' }),
    ...(metre === undefined ? {} : { metre: metre as Metre }),
    ...(feel === undefined ? {} : { feel: feel as Feel }),
  });
}

/**
 * The form that the words name, varied as they ask. A minor key turns a major form into its minor,
 * since that is what a band means by "a blues in Gm". Words are checked by what they are given to.
 */
export function readVariedForm(words: FormWords, key: Key, terminal: Reader): Form {
  return varyNamedForm(readFormWords(words.form, { terminal, key }), key, words);
}

/** A form varied as the words ask, and for the mode of the key; see {@link readVariedForm}. */
export function varyNamedForm(
  form: Form,
  { mode }: Key,
  { vary, turnaround }: Omit<FormWords, 'form'>,
): Form {
  const plain = mode === 'minor' && form.mode === 'major' ? toMinor(form) : form;
  const varied = vary === undefined ? plain : varyForm(plain, readList(vary) as Variation[]);
  return turnaround === undefined ? varied : withTurnaround(varied, turnaround as TurnaroundId);
}

/** The part of a plan that {@link FrameWords} name. */
export function readFrame({ intro, ending }: FrameWords): Pick<ChartOptions, 'intro' | 'ending'> {
  return {
    ...(intro === undefined ? {} : { intro: intro as IntroKind }),
    ...(ending === undefined ? {} : { ending: ending as EndingId }),
  };
}
