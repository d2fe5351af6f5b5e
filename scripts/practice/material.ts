import { readdirSync, readFileSync } from 'node:fs';
import { makeChart } from '@reedplate/form';
import { readAbc } from '@reedplate/interchange';
import type { Line } from '@reedplate/line';
import { parseKey, randomFrom, toKey } from '@reedplate/pitch';
import { composeLine, findPhrases, makeExercise } from '@reedplate/practice';
import type { Solo } from '../../packages/chord-tone/validity/read-solos.js';
import { melodiesOf } from '../../packages/practice/src/compose/learn-phrases.js';
import { placeOwn } from './place-own.js';

/** A line with the pitch class of its tonic. */
export interface Heard {
  readonly line: Pick<Line, 'notes'>;
  readonly tonic: number;
}

/** Lines of one kind, to be held against those of another. */
export interface Material {
  readonly name: string;
  readonly lines: readonly Heard[];
}

const KEY = 'G';
const TONIC = parseKey(KEY).pitchClass;
/** What choruses are composed over. */
export const CHART = makeChart('basic', KEY);
const COUNT = 40;
/** Ticks of four bars of four quarters. */
const PHRASE = 4 * 4 * 960;

/** Solos of the data file that is given. */
export function solosOf(solos: readonly Solo[]): Material {
  const lines = solos.map(heardOn);
  return { name: `${lines.length} real solos (Weimar Jazz Database, 2017, ODbL 1.0)`, lines };
}

/** Tunes of a folder of ABC files. */
export function tunesOf(folder: string): Material {
  const lines = readdirSync(folder)
    .filter((name) => name.endsWith('.abc'))
    .flatMap((name) => readAbc(readFileSync(`${folder}/${name}`, 'utf8')))
    .filter(({ line }) => line.notes.length > 0)
    .map(({ line, key = 'C' }) => ({ line, tonic: parseKey(key).pitchClass }));
  return { name: `${lines.length} dance tunes (Nottingham Music Database, GPL 3)`, lines };
}

/** Choruses of the catalogue, each as it is placed on its harp. */
export function catalogueChoruses(): Material {
  const lines = findPhrases({ kind: 'chorus' }).map((phrase) => heardOn(placeOwn(phrase)));
  return { name: `${lines.length} choruses of the catalogue`, lines };
}

/** Every phrase of the catalogue in major, what composed lines are learned from. */
export function cataloguePhrases(): Material {
  const lines = melodiesOf(findPhrases(), 'major').map(({ line, key }) => ({
    line,
    tonic: toKey(key).pitchClass,
  }));
  return { name: `${lines.length} phrases of the catalogue in major`, lines };
}

function heardOn({ line, chart }: Pick<Solo, 'line' | 'chart'>): Heard {
  return { line, tonic: parseKey(chart.key).pitchClass };
}

/** Composed choruses by a plan, seeds 1 to 40. */
export function composedLines(plan: string): readonly Line[] {
  return Array.from(
    { length: COUNT },
    (_, at) => composeLine(CHART, 'C', { seed: at + 1, plan }).line,
  );
}

/** The same as material. */
export function composed(lines: readonly Line[], plan: string): Material {
  const heard = lines.map((line) => ({ line, tonic: TONIC }));
  return { name: `${lines.length} composed choruses, plan ${plan}`, lines: heard };
}

/** The same without the second A, which is the first note by note; what comes after it follows on the first. */
export function withoutRepeat({ name, lines }: Material): Material {
  const heard = lines.map(({ line, tonic }) => {
    const kept = line.notes.filter(({ start }) => start < PHRASE || start >= 2 * PHRASE);
    const notes = kept.map((note) =>
      note.start < PHRASE ? note : { ...note, start: note.start - PHRASE },
    );
    return { line: { notes }, tonic };
  });
  return { name: `${name}, A once`, lines: heard };
}

/** The same rhythm with notes drawn from the line's own, each without regard to the one before. */
export function inRandomOrder({ lines }: Material): Material {
  const random = randomFrom(1);
  const shuffled = lines.map(({ line, tonic }) => {
    const pitches = [...new Set(line.notes.map(({ pitch }) => pitch))];
    const notes = line.notes.map((note) => ({
      ...note,
      pitch: pitches[Math.floor(random() * pitches.length)] ?? 0,
    }));
    return { line: { notes }, tonic };
  });
  return { name: 'their rhythm over the same notes at random', lines: shuffled };
}

/** Arpeggios up over the same chart, as the exercise gives them. */
export function arpeggios(): Material {
  const exercise = makeExercise(CHART, 'C', { kind: 'arpeggios-up' });
  if (!exercise.playable) throw new Error('arpeggios over a basic blues are not playable');
  return { name: 'arpeggios up', lines: [{ line: exercise.line, tonic: TONIC }] };
}
