import { type Harp, parseHarp, REGISTERS, type Tuning } from '@reedplate/layout';
import type { Command } from 'commander';
import type { Terminal } from '../terminal.js';
import { withOptionGroup } from './option-group.js';
import { readTuningWord, TUNING_WORD } from './read-tuning.js';
import { readList } from './read-words.js';

/** Words that say which harps there are to choose from. */
export interface HarpChoiceWords {
  readonly own?: string;
  readonly tuning: string;
}

/** Adds `--own` and `--tuning`. */
export function withHarpChoiceOptions(command: Command): Command {
  return withOptionGroup(command, 'Harps:', (group) =>
    group
      .option('--own <harps>', 'harps owned, apart by commas: "C, low F, Am natural-minor"')
      .option(
        '--tuning <tuning>',
        `tuning of the twelve harps, without --own: ${TUNING_WORD}`,
        'standard',
      ),
  );
}

/**
 * The harps to choose from, as options to hand on: those owned, each with a register before its key
 * and a tuning, by id or file, after it; or the twelve of a tuning.
 *
 * @throws ReedplateError `LIST_EMPTY`, and what `parseHarp` and `readTuningWord` throw
 */
export function readHarpChoice(
  { own, tuning }: HarpChoiceWords,
  terminal: Pick<Terminal, 'readText'>,
): { readonly own?: readonly Harp[]; readonly tuning: Tuning } {
  return {
    tuning: readTuningWord(tuning, terminal),
    ...(own === undefined
      ? {}
      : { own: readList(own).map((name) => readHarpName(name, terminal)) }),
  };
}

/** The harp that a name means, its tuning by id or by file. */
function readHarpName(name: string, terminal: Pick<Terminal, 'readText'>): Harp {
  const words = name.trim().split(/\s+/u);
  const hasRegister = REGISTERS.some((register) => register === words[0]?.toLowerCase());
  const word = words[hasRegister ? 2 : 1];
  if (word === undefined) return parseHarp(name);
  const tuning = readTuningWord(word, terminal);
  const known = { tunings: [tuning] };
  return parseHarp(words.map((each) => (each === word ? tuning.id : each)).join(' '), { known });
}
