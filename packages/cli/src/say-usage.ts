import { parseKey } from '@reedplate/pitch';
import type { CommanderError } from 'commander';
import { oneLine } from './shared/one-line.js';

/** What is wrong with the words of a command, in one line, with what was most likely meant. */
export function sayUsage({ message, code }: CommanderError, words: readonly string[]): string {
  // Commander sets a suggestion on a second line; a script's log wants one line an error.
  const text = oneLine(message.replace(/^error: /u, ''));
  if (code === 'commander.missingMandatoryOptionValue') return sayMissing(text, words);
  if (code === 'commander.excessArguments') return sayExcess(text, words);
  return text;
}

/** A key that stands alone was most likely meant for the option that is missing. */
function sayMissing(text: string, words: readonly string[]): string {
  const option = text.split(/[\s',]/u).find((word) => word.startsWith('--')) ?? text;
  const key = looseKeys(words)[0];
  const missing = `${option} is missing`;
  const takesKey = option === '--key' || option === '--harp';
  return key === undefined || !takesKey ? missing : `${missing}: did you mean ${option} ${key}?`;
}

function sayExcess(text: string, words: readonly string[]): string {
  const key = looseKeys(words)[0];
  return key === undefined
    ? text
    : `${text} "${key}" stands alone: give it as --key ${key} or --harp ${key}.`;
}

/** Words that name a key and follow no option. */
function looseKeys(words: readonly string[]): readonly string[] {
  return words.filter((word, at) => at > 0 && !words[at - 1]?.startsWith('-') && isKey(word));
}

function isKey(word: string): boolean {
  try {
    parseKey(word);
    return true;
  } catch {
    return false;
  }
}
