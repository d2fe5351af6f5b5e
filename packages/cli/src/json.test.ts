import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { makeBacking, summariseBacking } from '@reedplate/backing';
import { chartAvailability, progressOf, scoreLine } from '@reedplate/chord-tone';
import { ENDINGS, FORMS, formById, makeChart, recogniseForm, toMinor } from '@reedplate/form';
import { readPiece, summarisePiece } from '@reedplate/interchange';
import {
  chordIntonation,
  harpName,
  makeHarp,
  parseHarp,
  retuningPlan,
  TUNINGS,
  temperHarp,
  tuningById,
} from '@reedplate/layout';
import { readLine } from '@reedplate/line';
import { hearNotes, readWav } from '@reedplate/listen';
import { bestPaths, everyHarp, explainPath, fitHarps } from '@reedplate/playability';
import { harpMap, pickHarps, planSetList, scaleMap, scaleRun } from '@reedplate/position';
import {
  composeLine,
  findPhrases,
  makeExercise,
  makeLesson,
  parsePhrase,
  phraseById,
  phraseChart,
  placePhrase,
  practiceLine,
} from '@reedplate/practice';
import {
  makeStudySetup,
  readResults,
  studyTune,
  summariseResults,
  tuningChanges,
} from '@reedplate/study';
import { describe, expect, test } from 'vitest';
import { RECORDING } from './shared/recording.fixture.js';
import { runWords } from './shared/run-words.fixture.js';
import { VERBS } from './verb-table.js';

const TAKE = readFileSync(
  fileURLToPath(new URL('../../../examples/first-blues/take.json', import.meta.url)),
  'utf8',
);
const LINE = readLine(TAKE);
const ABC = 'X:1\nT:Two\nM:4/4\nL:1/4\nK:G\nG B d e|d B G2|]\n';
const FILES: ReadonlyMap<string, string> = new Map([
  ['take.json', TAKE],
  ['two.abc', ABC],
  ['mine.tab', '-4 -5 -6:2'],
]);

const folder = mkdtempSync(join(tmpdir(), 'reedplate-json-'));
const fileOf = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};
/** The take without its tempo. */
const UNTIMED = readLine({ notes: LINE.notes });
const TUNE = JSON.stringify({ key: 'G', line: UNTIMED });
const TUNES = fileOf('tunes.ndjson', `${TUNE}\n`);
const SETUP = makeStudySetup({ positions: [2] });
const RESULTS = fileOf('results.ndjson', `${JSON.stringify(studyTune(TUNE, 1, SETUP))}\n`);

const C = makeHarp('C');
const QUICK = makeChart('quick-change', 'G');
const SONG = '--form quick-change --key G';

/** What is typed, and what the library gives for the same. */
const ASKED: readonly (readonly [string, () => unknown])[] = [
  ['pick --key G', () => pickHarps('G', { chart: makeChart('basic', 'G') })],
  [
    `pick ${SONG} --own D,C --level natural`,
    () => pickHarps('G', { chart: QUICK, own: ['D', 'C'], level: 'natural' }),
  ],
  ['map --harp C', () => harpMap('C', { level: 'overbends' })],
  [
    'map --harp C --position 2 --valved',
    () => harpMap('C', { level: 'overbends', key: 'G', valved: true }),
  ],
  [`chart ${SONG} --choruses 2`, () => makeChart('quick-change', 'G', { choruses: 2 })],
  ['chart --key Am', () => makeChart(toMinor('basic'), 'Am')],
  ['forms', () => FORMS],
  ['forms waltz', () => [formById('waltz')]],
  ['forms --endings', () => ENDINGS],
  ['recognise G7|C7|G7|D7', () => recogniseForm('G7|C7|G7|D7')],
  [`target ${SONG} --harp C`, () => chartAvailability(QUICK, 'C')],
  [
    `target ${SONG} --harp C --shapes --style major`,
    () => chartAvailability(QUICK, 'C', { shapes: true, style: 'major' }),
  ],
  [`practice ${SONG} --harp C`, () => practiceLine(QUICK, 'C', { kind: 'roots' })],
  [
    `practice ${SONG} --harp C --kind thirds --level natural`,
    () => makeExercise(QUICK, 'C', { kind: 'thirds', level: 'natural' }),
  ],
  [
    `compose ${SONG} --harp C --seed 3 --most 4`,
    () => composeLine(QUICK, 'C', { seed: 3, density: { fewest: 2, most: 4 } }),
  ],
  [`score take.json ${SONG} --harp C`, () => scoreLine(LINE, QUICK, { harp: 'C' })],
  [
    `score take.json take.json ${SONG}`,
    () => progressOf([scoreLine(LINE, QUICK), scoreLine(LINE, QUICK)]),
  ],
  [
    'phrases --kind turnaround --grade 2 --mode minor --position 3',
    () => findPhrases({ kind: 'turnaround', grade: 2, mode: 'minor', position: 3 }),
  ],
  ['phrases stair', () => [phraseById('stair')]],
  [
    'phrases --from-tab mine.tab --position 3 --harmony i7',
    () => [parsePhrase('-4 -5 -6:2', { id: 'from-tab', harmony: 'i7', position: 3 })],
  ],
  [
    'phrases stair --harp D --key A',
    () => [placePhrase('stair', { chart: phraseChart(phraseById('stair'), 'A'), harp: 'D' })],
  ],
  [
    'phrases stair --harp D --key A --over basic --bar 5',
    () => [placePhrase('stair', { chart: makeChart('basic', 'A'), harp: 'D', bar: 5 })],
  ],
  [
    `lesson ${SONG} --level natural --minutes 30`,
    () => makeLesson({ form: 'quick-change', key: 'G', level: 'natural', minutes: 30 }),
  ],
  ['listen take.wav', () => hearNotes(readWav(RECORDING))],
  ['path take.json --harp C', () => explainPath(LINE, 'C')],
  ['path take.json --harp C --count 2', () => bestPaths(LINE, 'C', { count: 2 })],
  ['path take.json --harp F# --level natural', () => explainPath(LINE, 'F#', { level: 'natural' })],
  ['fit take.json --count 3', () => fitHarps(LINE, everyHarp(), { count: 3 })],
  ['scale --harp C --key G', () => scaleMap('C', 'G', 'blues')],
  [
    'scale --harp C --position 3 --scale dorian --run',
    () => scaleRun('C', 'D', 'dorian', { level: 'bends' }),
  ],
  [
    'setlist G C --own C,F --form basic',
    () =>
      planSetList(
        (['G', 'C'] as const).map((key) => ({ key, chart: makeChart('basic', key) })),
        { own: ['C', 'F'] },
      ),
  ],
  ['tunings', () => TUNINGS],
  ['tunings solo-ten', () => [tuningById('solo-ten')]],
  [
    'retune --to raised-fifth-draw --harp C',
    () => retuningPlan(C, makeHarp('C', { tuning: 'raised-fifth-draw' })),
  ],
  ['temper --harp C --temperament seven-limit', () => temperHarp('C', 'seven-limit')],
  [
    'temper --harp C --holes 2,3,4',
    () => chordIntonation(temperHarp('C', 'equal'), [2, 3, 4], 'draw'),
  ],
  ['convert two.abc two.mid', () => summarisePiece(readPiece(ABC, { format: 'abc' }))],
  [
    `backing ${SONG} --choruses 2 --tempo 100 -o band.mid`,
    () =>
      summariseBacking(makeBacking(makeChart('quick-change', 'G', { choruses: 2, tempo: 100 }))),
  ],
  [`summary ${RESULTS}`, () => summariseResults(readResults(RESULTS))],
  [`adapt ${TUNES}`, () => tuningChanges([UNTIMED], 'standard')],
];

const print = async (words: string): Promise<string> => {
  const text = (path: string): string => FILES.get(path) ?? '';
  const { code, out, err } = await runWords(words.split(' '), {
    readText: text,
    readBytes: (path) => (path === 'take.wav' ? RECORDING : new TextEncoder().encode(text(path))),
    writeBytes: () => {},
  });
  expect([code, err]).toEqual([0, '']);
  return out;
};

/** What JSON makes of an answer, each harp by the name that it is found by again. */
const byName = (answer: unknown): unknown =>
  JSON.parse(
    JSON.stringify(answer, (_, value) =>
      value?.firstPosition === undefined || value.holes === undefined ? value : harpName(value),
    ),
  );

describe('--json', () => {
  test.each(ASKED)('of reedplate %s prints what the library returns', async (words, answer) => {
    expect(JSON.parse(await print(`${words} --json`))).toEqual(byName(answer()));
  });

  const ofHarps = ASKED.filter(([, answer]) =>
    JSON.stringify(answer()).includes('"firstPosition":'),
  );

  test.each(ofHarps)('--all-reeds of reedplate %s leaves nothing out', async (words, answer) => {
    expect(JSON.parse(await print(`${words} --json --all-reeds`))).toEqual(
      JSON.parse(JSON.stringify(answer())),
    );
  });

  test('is asked here of every verb that prints an answer', () => {
    // A study prints a result a line; a handout and a picture are files.
    const others = ['study', 'handout', 'picture'];
    const asked = new Set([...ASKED.map(([words]) => words.split(' ')[0]), ...others]);
    expect([...asked].sort()).toEqual(VERBS.map(({ name }) => name).sort());
  });

  test('names a harp as every verb and parseHarp read it', async () => {
    const [{ harp }] = JSON.parse(await print('pick --key G --json'));
    expect(parseHarp(harp)).toEqual(C);
  });
});
