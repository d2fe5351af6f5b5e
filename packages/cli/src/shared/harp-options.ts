import { type Harp, makeHarp, parseHarp, REGISTERS, type Register } from '@reedplate/layout';
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

const HARP = '--harp <harp>';
const GROUP = 'Harp:';
const STANDARD = 'standard';

/** Adds `--harp` (required), `--tuning` and `--register`. */
export function withHarpOptions(command: Command): Command {
  return withOptionGroup(command, GROUP, (group) =>
    withKindOfHarp(
      group.requiredOption(HARP, 'key printed on the harp: C, A, Bb …, or its name: low F'),
    ),
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
 * The harp that the words name: a key, with its tuning and register in options of their own, or a name
 * that holds them, such as `low F`.
 *
 * @throws ReedplateError `USAGE` for a tuning or a register twice, and what `parseKey`, `parseHarp`,
 * `readTuningWord` and `makeHarp` throw
 */
export function readHarp({ harp, tuning, register }: HarpWords, terminal: Reader): Harp {
  if (/\S\s+\S/u.test(harp)) {
    if (tuning === STANDARD && register === STANDARD) return parseHarp(harp);
    const expected = 'the key alone in --harp, where --tuning or --register is given';
    throw new ReedplateError({ code: 'USAGE', value: harp, expected });
  }
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
