import type { Command } from 'commander';

/** Adds options that stand under a heading of their own in the help of a verb. */
export function withOptionGroup(
  command: Command,
  heading: string,
  add: (command: Command) => Command,
): Command {
  return add(command.optionsGroup(heading)).optionsGroup('Options:');
}
