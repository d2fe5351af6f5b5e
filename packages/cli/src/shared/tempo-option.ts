import type { Command } from 'commander';
import { readWholeNumber } from './read-words.js';

/** A word for the tempo of what is written. */
export interface TempoWords {
  readonly tempo?: string;
}

/** Adds `--tempo`, for sheets, which may do without. */
export function withTempoOption(command: Command): Command {
  return command.option('--tempo <number>', 'felt beats a minute, for what is written');
}

/** The tempo that the words name, if any. */
export function readTempoOption({ tempo }: TempoWords): { readonly tempo?: number } {
  if (tempo === undefined) return {};
  return { tempo: readWholeNumber(tempo, { min: 1, max: 1000, what: 'felt beats a minute' }) };
}
