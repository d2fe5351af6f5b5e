import { itemAt } from '@reedplate/pitch';
import type { Command, Option } from 'commander';

const LONG_OPTION = /^--[a-z]/iu;

/**
 * Refuses words in which an option stands where the value of the one before it should: in
 * `--key --form basic` the key is what is missing. A value that does begin so is given with a sign of
 * equality, as `--title=--mine`.
 *
 * @throws CommanderError that says which option has no value
 */
export function requireValues(program: Command, words: readonly string[]): void {
  const [first] = words;
  const verb = program.commands.find((each) => [each.name(), each.alias()].includes(first ?? ''));
  if (verb === undefined) return;
  const named = (word: string): Option | undefined =>
    verb.options.find(({ short, long }) => word === short || word === long);
  const end = words.indexOf('--');
  const read = end < 0 ? words : words.slice(0, end);
  for (const [at, word] of read.slice(0, -1).entries()) {
    const next = itemAt(read, at + 1);
    const isOption = LONG_OPTION.test(next) || next === '-h' || named(next) !== undefined;
    if (named(word)?.required === true && isOption) {
      verb.error(`${word} has no value: the next word, ${next}, is an option itself`);
    }
  }
}
