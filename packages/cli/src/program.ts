import { Command, type Option } from 'commander';
import { examples } from './shared/examples.js';
import { wrapLine } from './shared/wrap.js';
import type { Terminal } from './terminal.js';
import { VERBS, type VerbRow } from './verb-table.js';
import { version } from './version.js';

const EXAMPLES = examples(
  'reedplate pick --key G',
  'reedplate target --form quick-change --key G --harp C',
  'reedplate practice --key G --harp C --kind guide-tones',
);

const MORE = 'reedplate help VERB shows the options of a verb, with examples.';

/**
 * The `reedplate` command, writing to `terminal` and never ending the process. All verbs are known by
 * name; the one that the words ask for is loaded, and no other.
 */
export async function buildProgram(words: readonly string[], terminal: Terminal): Promise<Command> {
  const asked = verbAskedFor(words);
  const setUp = await asked?.load();
  const program = new Command('reedplate')
    .description('Blues on the ten-hole diatonic harmonica: which harp, which chords, which holes.')
    .version(version)
    .exitOverride()
    .configureHelp({
      optionDescription: sayOption,
      subcommandTerm: (verb) => verb.name(),
      helpWidth: terminal.width,
      minWidthToWrap: NARROWEST,
    })
    .configureOutput({
      writeOut: (text) => terminal.out(wrapHelp(text, terminal.width)),
      writeErr: (text) => terminal.err(wrapHelp(text, terminal.width)),
      outputError: () => {},
    })
    .addHelpText('after', `${EXAMPLES}\n\n${MORE}`);
  // Each verb copies what is set above, so they are added after it.
  for (const row of VERBS) {
    const verb = addVerb(program, row);
    if (row === asked) setUp?.(verb, terminal);
  }
  return program;
}

/** Narrowest column of a help that is still set beside what it explains. */
const NARROWEST = 20;

/** A help within the width, but for its examples: a command is copied whole. */
function wrapHelp(text: string, width: number): string {
  return text
    .split('\n')
    .flatMap((line) => (line.startsWith('  reedplate ') ? [line] : wrapLine(line, width)))
    .join('\n');
}

/** The verb that the words name, after `help` or first; none where there is no such verb. */
function verbAskedFor(words: readonly string[]): VerbRow | undefined {
  const [first, second] = words.filter((word) => !word.startsWith('-'));
  const name = first === 'help' ? second : first;
  if (name === undefined) return undefined;
  return VERBS.find((row) => row.name === name || row.spelling === name);
}

function addVerb(program: Command, { name, spelling, heading, summary }: VerbRow): Command {
  const verb = program.commandsGroup(heading).command(name).description(summary);
  return spelling === undefined ? verb : verb.alias(spelling);
}

/** What an option does, and its default as it would be typed; a switch is off without saying so. */
function sayOption({ description, defaultValue }: Option): string {
  return typeof defaultValue === 'string'
    ? `${description} (default: ${defaultValue})`
    : description;
}
