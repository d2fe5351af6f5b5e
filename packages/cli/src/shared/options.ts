import type { Command } from 'commander';

/** Adds `--json`. */
export function withJson(command: Command): Command {
  return command.option('--json', 'print the answer as JSON', false);
}

/** Adds `--json`, and `--all-reeds` for answers that hold a harp. */
export function withJsonOfHarps(command: Command): Command {
  return withJson(command).option(
    '--all-reeds',
    'with --json: harps with all their reeds, not by name',
    false,
  );
}
