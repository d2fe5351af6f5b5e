import { availableParallelism } from 'node:os';
import { TECHNIQUE_LEVELS } from '@reedplate/layout';
import { parseKey, ReedplateError } from '@reedplate/pitch';
import {
  makeStudySetup,
  type StudyCount,
  type StudyDone,
  type StudyLineFailure,
  type StudySetup,
  type StudyShare,
  studyFiles,
} from '@reedplate/study';
import type { Command } from 'commander';
import { endPartlyDone } from '../../exit-code.js';
import { examples } from '../../shared/examples.js';
import { readLevel } from '../../shared/level-options.js';
import { type PartWords, readPart, withPart } from '../../shared/part-option.js';
import { MODEL_HELP } from '../../shared/player-options.js';
import { readModelWord } from '../../shared/read-model.js';
import { readTuningList, TUNING_LIST } from '../../shared/read-tuning.js';
import { readList, readNumber, readWholeNumber } from '../../shared/read-words.js';
import type { Terminal } from '../../terminal.js';

interface StudyWords extends PartWords {
  readonly model?: string;
  readonly tunings: string;
  readonly positions: string;
  readonly levels: string;
  readonly player?: string;
  readonly octaves: string;
  readonly key?: string;
  readonly tempo?: string;
  readonly first: string;
  readonly share?: string;
  readonly workers?: string;
  readonly out?: string;
  readonly resume: boolean;
}

/** Gives `reedplate study` its options and what it does. */
export function setUpStudy(verb: Command, terminal: Terminal): void {
  withPart(verb)
    .argument(
      '<tunes...>',
      'files of tunes: one JSON value a line (- for standard input), ABC, MIDI or MusicXML',
    )
    .option('--model <model>', MODEL_HELP)
    .option('--tunings <tunings>', TUNING_LIST, 'standard')
    .option('--positions <positions>', 'positions apart by commas, 1 to 12', '1,2,3')
    .option('--levels <levels>', `levels apart by commas: ${TECHNIQUE_LEVELS.join(', ')}`, 'bends')
    .option('--player <file>', 'who plays, as JSON of a player, in place of --levels')
    .option('--octaves <octaves>', 'octaves a tune may be moved', '-1,0,1')
    .option('--key <key>', 'key of tunes in ABC, MIDI and MusicXML that give none')
    .option(
      '--tempo <bpm>',
      'felt beats a minute of every tune; 100 without it where a tune says none',
    )
    .option('--share <part>', 'only a part of the tunes, such as 2/4: the second of four')
    .option(
      '--first <number>',
      'number of the first tune, where this input is part of a longer one',
      '1',
    )
    .option('--workers <number>', 'threads; as many as there are cores without it')
    .option('--out <file>', 'file for the results instead of standard output')
    .option('--resume', 'go on where the file of results ends', false)
    .option('--json', 'results are JSON in any case: one value a line', true)
    .addHelpText(
      'after',
      examples(
        'reedplate study tunes.ndjson --tunings standard,raised-fifth-draw --out results.ndjson',
        'reedplate study tunes.ndjson --out results.ndjson --resume',
        'reedplate study tunes.abc take.mid sheet.musicxml --key G --positions 2',
        'reedplate study tunes.ndjson --share 2/4 --out part-2.ndjson',
        'cat tunes.ndjson | parallel --pipe --keep-order reedplate study - --workers 1',
      ),
    )
    .action(async (tunes: readonly string[], words: StudyWords) => {
      const setup = readSetup(words, terminal);
      const workers = readWorkers(words);
      if (words.resume && words.out === undefined) {
        throw new ReedplateError({ code: 'USAGE', value: '--resume', expected: '--out as well' });
      }
      await study(tunes, setup, workers, words, terminal);
    });
}

function readSetup(words: StudyWords, terminal: Terminal): StudySetup {
  const { model, tunings, positions, levels, player, octaves, tempo } = words;
  const readOne = (level: string) => readLevel({ ...words, level }, terminal);
  return makeStudySetup({
    ...(model === undefined ? {} : { model: readModelWord(model, terminal) }),
    ...(tempo === undefined ? {} : { tempo: readNumber(tempo, 'felt beats a minute') }),
    tunings: readTuningList(tunings, terminal),
    positions: readList(positions).map((word) => readNumber(word, 'a position')),
    levels: player === undefined ? readList(levels).map(readOne) : [readOne(levels)],
    octaves: readList(octaves).map((word) => readNumber(word, 'octaves')),
  });
}

function readWorkers({ workers }: StudyWords): number {
  if (workers === undefined) return availableParallelism();
  return readWholeNumber(workers, { min: 1, max: 256, what: 'a number of workers' });
}

const SHARE = /^(\d{1,6})\/(\d{1,6})$/u;

function readShare({ share }: StudyWords): StudyShare | undefined {
  if (share === undefined) return undefined;
  const [, part, of] = SHARE.exec(share) ?? [];
  if (part !== undefined && of !== undefined) return { part: Number(part), of: Number(of) };
  const expected = 'a part of the tunes, such as 2/4: the second of four';
  throw new ReedplateError({ code: 'USAGE', value: share, expected });
}

async function study(
  tunes: readonly string[],
  setup: StudySetup,
  workers: number,
  words: StudyWords,
  terminal: Terminal,
): Promise<void> {
  const { out, resume, key, first } = words;
  const count = await studyFiles(tunes, setup, {
    out,
    resume,
    workers,
    key: key === undefined ? undefined : parseKey(key).name,
    ...readPart(words),
    first: readWholeNumber(first, {
      min: 1,
      max: 2 ** 31 - 1,
      what: 'the number of the first tune',
    }),
    share: readShare(words),
    watcher: {
      failed: (failures) => terminal.err(failures.map(sayFailure).join('')),
      resumed: (done) => terminal.err(sayResumed(done)),
    },
  });
  if (count.failures === 0) return;
  terminal.err(`reedplate: ${sayCount(count)}\n`);
  endPartlyDone();
}

/** Only what was mended is said. */
const sayResumed = ({ cut, number }: StudyDone): string =>
  cut === 0
    ? ''
    : `reedplate: the results end in a line that was not finished; all after tune ${number} is done again\n`;

const sayFailure = ({ number, message }: StudyLineFailure): string =>
  `reedplate: tune ${number}: ${message}\n`;

const sayCount = ({ failures, tunes }: StudyCount): string =>
  `${failures} of ${tunes} tunes could not be read; their results say why`;
