/**
 * How well takes are heard: notes found (F1), by how the recording was spoilt. The first half of the solos is to
 * choose on, the second to report. The reed is of our own making, or a sound font's, which fluidsynth plays.
 *
 *     npx tsx --tsconfig tsconfig.json packages/listen/validity/report.ts <solos.ndjson> choose|report [font.sf2]
 */
import { hearNotes } from '../src/index.js';
import type { Sound } from '../src/sound.js';
import { bendNotes } from './bend-notes.js';
import { centsBetween, f1Of, type Matched, matchNotes } from './match-notes.js';
import { playAdditive } from './play-additive.js';
import { playFluid } from './play-fluid.js';
import { readTakes, type Take } from './read-solos.js';
import { inRoom, onPhone, type Spoil, withNoise } from './spoil.js';

const [path, half = 'choose', font, most] = process.argv.slice(2);
if (path === undefined) {
  throw new Error('solos.ndjson is wanted: Weimar Jazz Database, jazzomat.hfm-weimar.de');
}
const all = readTakes(path);
const middle = all.length >> 1;
const takes = (half === 'report' ? all.slice(middle) : all.slice(0, middle)).slice(
  0,
  Number(most ?? all.length),
);

const ROWS: readonly (readonly [name: string, bends: boolean, spoil: Spoil])[] = [
  ['clean', false, (sound) => sound],
  ['clean, bends', true, (sound) => sound],
  ['room', true, inRoom],
  ['noise 20 dB', true, withNoise(20)],
  ['noise 10 dB', true, withNoise(10)],
  ['phone', true, onPhone],
];

/** What came of a take: all its notes, all with their ends, and those that move. */
interface Heard {
  readonly plain: Matched;
  readonly ends: Matched;
  readonly bent: Matched;
  readonly seconds: number;
  /** Seconds of the processor that hearing took. */
  readonly spent: number;
}

function hear(take: Take, bends: boolean, spoil: Spoil): Heard {
  const notes = bends ? bendNotes(take.notes, take.id) : take.notes;
  const seconds = Math.max(...notes.map(({ start, duration }) => start + duration)) + 0.5;
  const sound: Sound =
    font === undefined || font === '-'
      ? playAdditive(notes, seconds, take.id)
      : playFluid(notes, font);
  const spoilt = spoil(sound);
  const before = process.cpuUsage();
  const heard = hearNotes(spoilt).notes;
  const { user, system } = process.cpuUsage(before);
  const moving = notes.filter(({ curve }) => curve !== undefined);
  return {
    plain: matchNotes(notes, heard),
    ends: matchNotes(notes, heard, true),
    bent: matchNotes(moving, heard),
    seconds,
    spent: (user + system) / 1e6,
  };
}

const percent = (share: number): string => (100 * share).toFixed(1);
const sum = (values: readonly number[]): number => values.reduce((all, each) => all + each, 0);

function rowOf(name: string, bends: boolean, results: readonly Heard[]): string {
  const plain = results.map((each) => each.plain);
  const off = plain.flatMap(({ pairs }) => pairs.map(([a, b]) => Math.abs(centsBetween(a, b))));
  const cents = off.sort((a, b) => a - b)[off.length >> 1] ?? Number.NaN;
  const found = sum(results.map(({ bent }) => bent.pairs.length));
  const recall = found / sum(results.map(({ bent }) => bent.there));
  const speed = sum(results.map(({ seconds }) => seconds)) / sum(results.map(({ spent }) => spent));
  const cells = [
    name,
    percent(f1Of(plain)),
    percent(f1Of(results.map((each) => each.ends))),
    bends ? percent(recall) : '',
    cents.toFixed(1),
    speed.toFixed(0),
  ];
  return `| ${cells.join(' | ')} |`;
}

console.log(`${takes.length} takes to ${half}, ${font ?? 'a reed of our own making'}\n`);
console.log('| recording | F1 | with ends | moving notes found | median cents | times real time |');
console.log('|---|---:|---:|---:|---:|---:|');
for (const [name, bends, spoil] of ROWS) {
  console.log(
    rowOf(
      name,
      bends,
      takes.map((take) => hear(take, bends, spoil)),
    ),
  );
}
