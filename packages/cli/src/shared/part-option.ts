import type { Command } from 'commander';

/** Words that name a part of a file. */
export interface PartWords {
  readonly part?: string;
}

/** Adds `--part`: a file may hold several voices, tracks or staves, and a line is one of them. */
export function withPart(command: Command): Command {
  return command.option(
    '--part <part>',
    'which part of a file is the line: its number from 1, or its name; without it the one most like a tune',
  );
}

/** The part that the words name, as an option to hand on; nothing without `--part`. */
export function readPart({ part }: PartWords): { readonly part?: number | string } {
  if (part === undefined) return {};
  return { part: /^\d{1,6}$/u.test(part) ? Number(part) : part };
}
