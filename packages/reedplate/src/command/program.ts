import { Command, type Option } from 'commander';
import { addBacking } from '../commands/backing.js';
import { addChart } from '../commands/chart.js';
import { addConvert } from '../commands/convert.js';
import { addDesign } from '../commands/design.js';
import { addFit } from '../commands/fit.js';
import { addForms } from '../commands/forms.js';
import { addMap } from '../commands/map.js';
import { addPath } from '../commands/path.js';
import { addPick } from '../commands/pick.js';
import { addPractice } from '../commands/practice.js';
import { addRecognise } from '../commands/recognise.js';
import { addRetune } from '../commands/retune.js';
import { addScale } from '../commands/scale.js';
import { addScore } from '../commands/score.js';
import { addSet } from '../commands/set.js';
import { addStudy } from '../commands/study.js';
import { addSummary } from '../commands/summary.js';
import { addTarget } from '../commands/target.js';
import { addTune } from '../commands/tune.js';
import { addTunings } from '../commands/tunings.js';
import { examples } from './examples.js';
import type { Terminal } from './terminal.js';
import { version } from './version.js';

/** The verbs, under the headings of the help, in the order in which a player comes to need them. */
const VERBS = [
  ['Which harp:', [addPick, addSet, addMap, addScale]],
  ['The song:', [addChart, addForms, addRecognise]],
  ['To practise:', [addTarget, addPractice, addBacking, addScore]],
  ['Lines:', [addPath, addFit, addStudy, addSummary, addConvert]],
  ['Tunings:', [addTunings, addRetune, addTune, addDesign]],
] as const;

const EXAMPLES = examples(
  'reedplate pick --key G',
  'reedplate target --form quick-change --key G --harp C',
  'reedplate practice --key G --harp C --kind guide-tones',
);

const MORE = 'reedplate help VERB shows the options of a verb, with examples.';

/** The `reedplate` command with all its verbs, writing to `terminal` and never ending the process. */
export function buildProgram(terminal: Terminal): Command {
  const program = new Command('reedplate')
    .description('Blues on the ten-hole diatonic harmonica: which harp, which chords, which holes.')
    .version(version)
    .exitOverride()
    .configureHelp({ optionDescription: sayOption })
    .configureOutput({
      writeOut: terminal.out,
      writeErr: terminal.err,
      outputError: (message, write) => write(oneLine(message)),
    })
    .addHelpText('after', `${EXAMPLES}\n\n${MORE}`);
  // Each verb copies what is set above, so they are added after it.
  for (const [heading, verbs] of VERBS) {
    program.commandsGroup(heading);
    for (const add of verbs) add(program, terminal);
  }
  return program;
}

/** What an option does, and its default as it would be typed; a switch is off without saying so. */
function sayOption({ description, defaultValue }: Option): string {
  return typeof defaultValue === 'string'
    ? `${description} (default: ${defaultValue})`
    : description;
}

/** Commander sets a suggestion on a second line; a script's log wants one line an error. */
function oneLine(message: string): string {
  const text = message
    .replace(/^error: /u, '')
    .trim()
    .replaceAll(/\s*\n\s*/gu, ' ');
  return `reedplate: ${text}\n`;
}
