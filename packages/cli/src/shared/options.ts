import type { Command } from 'commander';

/** Adds `--json`. */
export function withJson(command: Command): Command {
  return command.option('--json', 'print the report as JSON', false);
}
