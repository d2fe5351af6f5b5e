import { type Harp, makeHarp, REGISTERS, type Register } from '@reedplate/layout';
import { parseKey, ReedplateError } from '@reedplate/pitch';
import type { Command } from 'commander';
import type { Terminal } from '../terminal.js';
import { withOptionGroup } from './option-group.js';
import { readTuningWord, TUNING_WORD } from './read-tuning.js';

/** Words that name a harp. */
export interface HarpWords {
  readonly harp: string;
  readonly tuning: string;
  readonly register: string;
}

/** Words that may name a harp. */
export type MaybeHarpWords = Partial<Pick<HarpWords, 'harp'>> & Omit<HarpWords, 'harp'>;

type Reader = Pick<Terminal, 'readText'>;

const HARP = '--harp <key>';
const GROUP = 'Harp:';
const STANDARD = 'standard';

/** Adds `--harp` (required), `--tuning` and `--register`. */
export function withHarpOptions(command: Command): Command {
  return withOptionGroup(command, GROUP, (group) =>
    withKindOfHarp(group.requiredOption(HARP, 'key printed on the harp: C, A, Bb …')),
  );
}

/** Adds `--harp`, which may be left out, `--tuning` and `--register`. */
export function withMaybeHarpOptions(command: Command, what: string): Command {
  return withOptionGroup(command, GROUP, (group) => withKindOfHarp(group.option(HARP, what)));
}

function withKindOfHarp(command: Command): Command {
  return command
    .option('--tuning <tuning>', `tuning of the harp: ${TUNING_WORD}`, STANDARD)
    .option('--register <register>', `register of the harp: ${REGISTERS.join(', ')}`, STANDARD);
}

/**
 * The harp that the words name.
 *
 * @throws ReedplateError what `parseKey`, `readTuningWord` and `makeHarp` throw
 */
export function readHarp({ harp, tuning, register }: HarpWords, terminal: Reader): Harp {
  return makeHarp(parseKey(harp), {
    tuning: readTuningWord(tuning, terminal),
    // A wrong register is refused by makeHarp.
    register: register as Register,
  });
}

/**
 * The harp that the words name, as an option to hand on; nothing without `--harp`.
 *
 * @throws ReedplateError `USAGE` for a kind of harp without its key, and as {@link readHarp}
 */
export function readMaybeHarp(
  { harp, ...kind }: MaybeHarpWords,
  terminal: Reader,
): { readonly harp?: Harp } {
  if (harp !== undefined) return { harp: readHarp({ harp, ...kind }, terminal) };
  if (kind.tuning === STANDARD && kind.register === STANDARD) return {};
  throw new ReedplateError({
    code: 'USAGE',
    value: kind.tuning === STANDARD ? kind.register : kind.tuning,
    expected: '--harp with --tuning and --register',
  });
}
