import { Command, type Option } from 'commander';
import { examples } from './shared/examples.js';
import type { Terminal } from './terminal.js';
import { addBacking } from './verbs/backing/backing.js';
import { addChart } from './verbs/chart/chart.js';
import { addConvert } from './verbs/convert/convert.js';
import { addDesign } from './verbs/design/design.js';
import { addFit } from './verbs/fit/fit.js';
import { addForms } from './verbs/forms/forms.js';
import { addMap } from './verbs/map/map.js';
import { addPath } from './verbs/path/path.js';
import { addPick } from './verbs/pick/pick.js';
import { addPractice } from './verbs/practice/practice.js';
import { addRecognise } from './verbs/recognise/recognise.js';
import { addRetune } from './verbs/retune/retune.js';
import { addScale } from './verbs/scale/scale.js';
import { addScore } from './verbs/score/score.js';
import { addSet } from './verbs/set/set.js';
import { addStudy } from './verbs/study/study.js';
import { addSummary } from './verbs/summary/summary.js';
import { addTarget } from './verbs/target/target.js';
import { addTune } from './verbs/tune/tune.js';
import { addTunings } from './verbs/tunings/tunings.js';
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
