/**
 * A small study from question to table: what do tunings made for melodies change for dance tunes?
 * See README.md beside this file for the question, the method, the results and their limits.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  type StudyCellSummary,
  type StudyTune,
  studyPlot,
  studyTune,
  summariseStudy,
  tuningChanges,
} from '@reedplate/study';
import { readCorpus, WHERE_TO_GET_IT } from './corpus.js';
import { drawPlot } from './draw-plot.js';
import { inSecondPosition, setupFor } from './question.js';
import { changesTable, resultTable } from './report.js';

const HERE = dirname(fileURLToPath(import.meta.url));
const OUT = join(HERE, 'results');
/** Tunes of the corpus that the search for a better tuning looks at: one in so many. */
const ONE_IN = 7;

async function main([folder]: readonly string[]): Promise<number> {
  const tunes = folder === undefined ? undefined : readCorpus(folder);
  if (tunes === undefined) {
    console.error(WHERE_TO_GET_IT);
    return 2;
  }
  mkdirSync(OUT, { recursive: true });
  const summaries = ['intermediate', 'beginner', 'advanced'].map((model) =>
    summarise(tunes, model),
  );
  const [cells = []] = summaries;
  const corpus = inSecondPosition(tunes, ONE_IN);
  const changes = tuningChanges(corpus, 'standard', {
    level: 'overbends',
    transpositions: [-12, 0, 12],
  });
  const effort = studyPlot(cells, 'effortPerEvent', { level: 'overbends' });
  const playable = studyPlot(cells, 'wholeShare', { tuning: 'standard' });
  save('effort.svg', await drawPlot(effort));
  save('playable.svg', await drawPlot(playable));
  save(
    'results.md',
    [
      `${tunes.length} tunes, model intermediate`,
      resultTable(cells),
      'Second position at level overbends, by model',
      ...summaries.map((all) => resultTable(all.filter(isHeadline))),
      `The best changes of one reed for ${corpus.length} major tunes in second position`,
      changesTable(changes, 12),
      '',
    ].join('\n\n'),
  );
  return 0;
}

const isHeadline = ({ position, level }: StudyCellSummary): boolean =>
  position === 2 && level === 'overbends';

function summarise(tunes: readonly StudyTune[], model: string): readonly StudyCellSummary[] {
  const setup = setupFor(model);
  const results = tunes.map((tune, at) => studyTune(JSON.stringify(tune), at + 1, setup));
  return summariseStudy(results.flatMap((result) => ('cells' in result ? [result] : [])));
}

function save(name: string, text: string): void {
  writeFileSync(join(OUT, name), text);
  console.log(`wrote ${join(OUT, name)}`);
}

process.exitCode = await main(process.argv.slice(2));
