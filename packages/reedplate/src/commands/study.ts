import { availableParallelism } from 'node:os';
import { TECHNIQUE_LEVELS, type TechniqueLevel } from '@reedplate/layout';
import { parseKey, ReedplateError } from '@reedplate/pitch';
import { EFFORT_MODELS, makeStudySetup, type StudySetup } from '@reedplate/playability';
import type { Command } from 'commander';
import { examples } from '../command/examples.js';
import { readTuningList, TUNING_LIST } from '../command/read-tuning.js';
import { readList, readNumber, readWholeNumber } from '../command/read-words.js';
import type { Terminal } from '../command/terminal.js';
import type { StudiedBatch } from '../study/batch.js';
import { isReaderGone, openOutput } from '../study/output.js';
import { makePace } from '../study/pace.js';
import { openPool } from '../study/pool.js';
import { showProgress } from '../study/progress.js';
import { readBatches } from '../study/read-batches.js';
import { linesDone } from '../study/resume.js';
import { runStudy } from '../study/run-study.js';
import { openSources } from '../study/sources.js';

interface StudyWords {
  readonly model: string;
  readonly tunings: string;
  readonly positions: string;
  readonly levels?: string;
  readonly octaves: string;
  readonly key?: string;
  readonly workers?: string;
  readonly out?: string;
  readonly resume: boolean;
}

/** Adds `reedplate study`. */
export function addStudy(program: Command, terminal: Terminal): void {
  const models = EFFORT_MODELS.map(({ id }) => id).join(', ');
  program
    .command('study')
    .argument(
      '<tunes...>',
      'files of tunes: one JSON value a line (- for standard input), ABC, MIDI or MusicXML',
    )
    .description('how playable many tunes are: each tuning, position and level, a line a tune')
    .option('--model <model>', `whose effort counts: ${models}`, 'intermediate')
    .option('--tunings <tunings>', TUNING_LIST, 'standard')
    .option('--positions <positions>', 'positions apart by commas, 1 to 12', '1,2,3')
    .option('--levels <levels>', `${TECHNIQUE_LEVELS.join(', ')}; that of the model without it`)
    .option('--octaves <octaves>', 'octaves a tune may be moved', '-1,0,1')
    .option('--key <key>', 'key of tunes in ABC, MIDI and MusicXML that give none')
    .option('--workers <number>', 'threads; as many as there are cores without it')
    .option('--out <file>', 'file for the results instead of standard output')
    .option('--resume', 'go on where the file of results ends', false)
    .option('--json', 'results are JSON in any case: one value a line', true)
    .addHelpText(
      'after',
      examples(
        'reedplate study tunes.ndjson --tunings standard,raised-fifth-draw --out results.ndjson',
        'reedplate study tunes.ndjson --out results.ndjson --resume',
        'reedplate study tunes.abc take.mid sheet.musicxml --positions 2 --levels natural,bends',
        'cat tunes.ndjson | parallel --pipe --keep-order reedplate study - --workers 1',
      ),
    )
    .action((tunes: readonly string[], words: StudyWords) => {
      const setup = readSetup(words, terminal);
      const workers = readWorkers(words);
      if (words.resume && words.out === undefined) {
        throw new ReedplateError({ code: 'USAGE', value: '--resume', expected: '--out as well' });
      }
      terminal.later(() => study(tunes, setup, workers, words, terminal));
    });
}

function readSetup(words: StudyWords, terminal: Terminal): StudySetup {
  const { model, tunings, positions, levels, octaves } = words;
  return makeStudySetup({
    model,
    tunings: readTuningList(tunings, terminal),
    positions: readList(positions).map((word) => readNumber(word, 'a position')),
    // A wrong level is refused by makeStudySetup.
    ...(levels === undefined ? {} : { levels: readList(levels) as readonly TechniqueLevel[] }),
    octaves: readList(octaves).map((word) => readNumber(word, 'octaves')),
  });
}

function readWorkers({ workers }: StudyWords): number {
  if (workers === undefined) return availableParallelism();
  return readWholeNumber(workers, { min: 1, max: 256, what: 'a number of workers' });
}

async function study(
  tunes: readonly string[],
  setup: StudySetup,
  workers: number,
  { out, resume, key }: StudyWords,
  terminal: Terminal,
): Promise<void> {
  const input = openSources(tunes, { key: key === undefined ? undefined : parseKey(key).name });
  const done = resume && out !== undefined ? linesDone(out, setup) : 0;
  const output = openOutput(out, resume);
  const pool = await openPool(workers);
  const progress = await showProgress(input.size);
  const pace = makePace();
  const count = { tunes: 0, failures: 0 };
  try {
    const items = readBatches(input.parts(), done, pace.bytes);
    for await (const studied of runStudy(items, setup, pool, pace)) {
      await output.write(studied.out);
      count.tunes += studied.tunes;
      count.failures += studied.failures.length;
      terminal.err(studied.failures.map(sayFailure).join(''));
      progress.update(input.bytesRead(), count.tunes);
    }
    progress.update(input.size, count.tunes);
  } catch (error) {
    if (!isReaderGone(error)) throw error;
    return;
  } finally {
    progress.stop();
    output.close();
    await pool.close();
  }
  if (count.failures > 0) terminal.err(`reedplate: ${sayCount(count)}\n`);
  if (done === 0 && count.failures === count.tunes) throw nothingRead(tunes);
}

/** A study of nothing is a slip of the name or of the format. */
function nothingRead(tunes: readonly string[]): ReedplateError {
  return new ReedplateError({
    code: 'LIST_EMPTY',
    value: tunes.join(' '),
    expected: 'at least one tune that can be read: one JSON value a line, ABC, MIDI or MusicXML',
  });
}

const sayFailure = ({ number, message }: StudiedBatch['failures'][number]): string =>
  `reedplate: line ${number}: ${message}\n`;

const sayCount = ({ failures, tunes }: { readonly failures: number; readonly tunes: number }) =>
  `${failures} of ${tunes} tunes could not be read; their results say why`;
