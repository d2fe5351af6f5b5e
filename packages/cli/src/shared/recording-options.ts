import { ReedplateError } from '@reedplate/pitch';
import type { Command } from 'commander';
import type { TempoWords } from './tempo-option.js';

/** Words on a recording, which says nothing of bars and beats itself. */
export interface RecordingWords extends TempoWords {
  readonly barOne?: string;
}

/** Adds `--tempo` and `--bar-one`, for verbs that read a recording. */
export function withRecordingOptions(command: Command): Command {
  return command
    .option('--tempo <number>', 'felt beats a minute of a recording, which does not say it')
    .option(
      '--bar-one <seconds>',
      'second of a recording at which bar 1 begins; where the first note does without it',
    );
}

/**
 * Refuses words on a recording where there is nothing that they could say.
 *
 * @param expected where they can stand
 * @throws ReedplateError `USAGE`
 */
export function refuseRecordingWords({ tempo, barOne }: RecordingWords, expected: string): void {
  if (tempo !== undefined) throw misplaced(`--tempo ${tempo}`, expected);
  if (barOne !== undefined) throw misplaced(`--bar-one ${barOne}`, expected);
}

function misplaced(value: string, expected: string): ReedplateError {
  return new ReedplateError({ code: 'USAGE', value, expected });
}
