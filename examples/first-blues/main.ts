/**
 * The whole road for one blues: from "blues in G" to a scored take. Each step is the command that
 * anyone can type; the files are written through the library.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readMidi, writeMidi } from '@reedplate/interchange';
import {
  isReedplateError,
  type Key,
  type Line,
  makeLine,
  toPitchClass,
  transposeLine,
} from 'reedplate';
import { readScenario } from './scenario.js';

const HERE = dirname(fileURLToPath(import.meta.url));
const OUT = join(HERE, 'out');
/** Pitch class of the key that the take was played in. */
const TAKE_KEY = 7;

const reedplateBin = join(dirname(createRequire(import.meta.url).resolve('reedplate')), 'cli.js');

function main(words: readonly string[]): number {
  const scenario = readScenario(words);
  const { key, form } = scenario;
  const song = ['--form', form, '--key', key.name];
  const harp = ['--harp', scenario.harp ?? bestHarp(song)];
  const take = takeFor(key);

  step('The harp', ['pick', ...song]);
  step('The reeds, and their degrees in the song', ['map', ...harp, '--key', key.name]);
  step('The chords', ['chart', ...song]);
  step('Where the chords lie', ['target', ...song, ...harp]);
  const practice = [...song, ...harp, '--kind', 'guide-tones'];
  step('What to practise', ['practice', ...practice]);
  step("How a student's take follows the changes", ['score', take, ...song, ...harp]);

  const report = capture(['practice', ...practice, '--json']);
  const line = save('practice-line.json', JSON.stringify(JSON.parse(report).line));
  const [backing, sheet] = [outFile('backing.mid'), outFile('sheet.musicxml')];
  const lesson = outFile('lesson.html');
  step('A band to play with', ['backing', ...song, '--choruses', '4', '-o', backing]);
  step('The practice line as a sheet with tab', ['convert', line, sheet, ...song, ...harp]);

  step('A lesson to print', ['handout', ...song, ...harp, '-o', lesson]);

  closing([
    take,
    save('practice.json', report),
    line,
    save('score.json', capture(['score', take, ...song, ...harp, '--json'])),
    backing,
    sheet,
    lesson,
  ]);
  return 0;
}

/** The key of the harp that the command picks first. */
function bestHarp(song: readonly string[]): string {
  return JSON.parse(capture(['pick', ...song, '--json'])).picks[0].harp.key;
}

/** The take, moved to the key of the song by the shorter way up or down, and to minor for a minor key. */
function takeFor(key: Key): string {
  const played = readMidi(readFileSync(join(HERE, 'take.mid'))).line;
  const up = toPitchClass(key.pitchClass - TAKE_KEY);
  const inMode = key.mode === 'minor' ? inMinor(played) : played;
  const moved = transposeLine(inMode, up > 6 ? up - 12 : up);
  return save('take.mid', writeMidi({ line: { ...moved, title: 'a first chorus' } }));
}

/** The thirds of I and IV lowered: what the same student would play over a minor blues. */
function inMinor(line: Line): Line {
  const lowered = new Set([4, 9]);
  const notes = line.notes.map((note) => ({
    ...note,
    pitch: note.pitch - (lowered.has(toPitchClass(note.pitch - TAKE_KEY)) ? 1 : 0),
  }));
  return makeLine(notes, { ...line });
}

function step(title: string, words: readonly string[]): void {
  console.log(`\n== ${title} ==\n$ reedplate ${words.join(' ')}\n`);
  run(words, 'inherit');
}

function capture(words: readonly string[]): string {
  return run(words, 'pipe');
}

function run(words: readonly string[], output: 'inherit' | 'pipe'): string {
  const { status, stdout } = spawnSync(process.execPath, [reedplateBin, ...words], {
    stdio: ['ignore', output, 'inherit'],
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`reedplate ${words[0]} ended with ${status}`);
  return stdout ?? '';
}

function save(name: string, content: string | Uint8Array): string {
  const path = outFile(name);
  writeFileSync(path, content);
  return path;
}

function outFile(name: string): string {
  mkdirSync(OUT, { recursive: true });
  return relative(process.cwd(), join(OUT, name));
}

function closing(written: readonly string[]): void {
  console.log('\n== Written ==');
  for (const path of written) console.log(`  ${path}`);
  console.log(`
== Try next ==
  npm start -- --key E --form basic --harp A     another key, form and harp
  npm start -- --key Am                          a minor blues
  npm run -s reedplate -- --help                 every command, each with its own --help
  docs/getting-started-instructors.md            build your own lesson on this`);
}

try {
  process.exitCode = main(process.argv.slice(2));
} catch (error) {
  if (!isReedplateError(error)) throw error;
  console.error(`reedplate: ${error.message}`);
  process.exitCode = 2;
}
