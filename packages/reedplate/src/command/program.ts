import { Command } from 'commander';
import { addBacking } from '../commands/backing.js';
import { addChart } from '../commands/chart.js';
import { addConvert } from '../commands/convert.js';
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
import { addTarget } from '../commands/target.js';
import { addTune } from '../commands/tune.js';
import { addTunings } from '../commands/tunings.js';
import type { Terminal } from './terminal.js';
import { version } from './version.js';

const VERBS = [
  addPick,
  addMap,
  addChart,
  addForms,
  addRecognise,
  addTarget,
  addPractice,
  addScore,
  addPath,
  addFit,
  addStudy,
  addScale,
  addSet,
  addTunings,
  addRetune,
  addTune,
  addConvert,
  addBacking,
] as const;

/** The `reedplate` command with all its verbs, writing to `terminal` and never ending the process. */
export function buildProgram(terminal: Terminal): Command {
  const program = new Command('reedplate')
    .description('Blues on the ten-hole diatonic harmonica: which harp, which chords, which holes.')
    .version(version)
    .exitOverride()
    .configureOutput({
      writeOut: terminal.out,
      writeErr: terminal.err,
      outputError: (message, write) => write(oneLine(message)),
    });
  // Each verb copies what is set above, so they are added after it.
  for (const add of VERBS) add(program, terminal);
  return program;
}

/** Commander sets a suggestion on a second line; a script's log wants one line an error. */
function oneLine(message: string): string {
  const text = message
    .replace(/^error: /u, '')
    .trim()
    .replaceAll(/\s*\n\s*/gu, ' ');
  return `reedplate: ${text}\n`;
}
