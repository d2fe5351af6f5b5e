import { parseArgs } from 'node:util';
import {
  isReedplateError,
  type Key,
  makeChart,
  makeHarp,
  parseKey,
  ReedplateError,
} from 'reedplate';

/** What is played: song key, form, and the harp at hand where one is given. */
export interface Scenario {
  readonly key: Key;
  readonly form: string;
  /** Key of the harp; undefined picks the best one for the song. */
  readonly harp: string | undefined;
}

/**
 * Reads the words after `npm start --`. Each is checked here, before anything is printed or written.
 *
 * @throws ReedplateError for an unknown word, key, form or harp
 */
export function readScenario(words: readonly string[]): Scenario {
  const { key, form, harp } = readWords(words);
  makeChart(form, parseKey(key));
  if (harp !== undefined) makeHarp(parseKey(harp));
  return { key: parseKey(key), form, harp };
}

function readWords(words: readonly string[]) {
  try {
    return parseArgs({
      args: [...words],
      options: {
        key: { type: 'string', default: 'G' },
        form: { type: 'string', default: 'quick-change' },
        harp: { type: 'string' },
      },
      strict: true,
    }).values;
  } catch (error) {
    if (isReedplateError(error)) throw error;
    throw new ReedplateError({
      code: 'USAGE',
      value: words.join(' '),
      expected: '--key KEY, --form FORM, --harp KEY, each with a value',
    });
  }
}
