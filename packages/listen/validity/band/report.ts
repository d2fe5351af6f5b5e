/**
 * How well bands are heard, on tracks made by script: tempo, bar lines, key, form and chords. Forms, grooves, sound
 * fonts and the other program of one half are not in the other: one is to choose on, one to report.
 *
 *     npx tsx --tsconfig tsconfig.json packages/listen/validity/band/report.ts choose|report [count] [seed] [row]
 */
import { appendFileSync } from 'node:fs';
import { hearBand } from '../../src/index.js';
import { inRoom, onPhone, type Spoil, withNoise } from '../spoil.js';
import { sayShare } from './intervals.js';
import { type Judged, judge } from './judge.js';
import { playTrack } from './play-track.js';
import type { Plan, Track } from './track.js';
import { type Half, tracksOf } from './tracks.js';

const [half = 'choose', count = '24', seed = '1', only] = process.argv.slice(2);

interface Row {
  readonly name: string;
  readonly plan: Plan;
  readonly lead?: boolean;
  readonly spoil?: Spoil;
}

const all =
  (...spoils: readonly Spoil[]): Spoil =>
  (sound) =>
    spoils.reduce((spoilt, spoil) => spoil(spoilt), sound);

const asItIs: Spoil = (sound) => sound;

const ROWS: readonly Row[] = [
  { name: 'clean', plan: 'plain' },
  { name: 'player on top', plan: 'plain', lead: true },
  { name: 'room', plan: 'plain', spoil: inRoom },
  { name: 'noise 10 dB', plan: 'plain', spoil: withNoise(10) },
  { name: 'phone', plan: 'plain', spoil: onPhone },
  { name: 'a bar left out', plan: 'left-out' },
  { name: 'a bar added', plan: 'added' },
  { name: 'no form of the catalogue', plan: 'absent' },
  { name: 'half a chorus', plan: 'half' },
  {
    name: 'player, room, phone, noise 6 dB',
    plan: 'plain',
    lead: true,
    spoil: all(inRoom, onPhone, withNoise(6)),
  },
];

function hear(
  track: Track,
  spoil: Spoil,
): { readonly judged: Judged; readonly seconds: number; readonly spent: number } {
  const { sound, truth } = playTrack(track);
  const spoilt = spoil(sound);
  const before = process.cpuUsage();
  const band = hearBand(spoilt);
  const { user, system } = process.cpuUsage(before);
  const judged = judge(band, truth);
  if (process.env.SHOW !== undefined && Object.values(judged.right).some((right) => !right))
    console.error(
      track,
      truth.tempo,
      truth.tonic,
      truth.form,
      band.form,
      band.alike.map(({ form }) => form),
      band.tempo,
      band.chart.key,
      band.chart.metre,
      judged,
    );
  return { judged, seconds: band.seconds, spent: (user + system) / 1e6 };
}

console.log(`${count} tracks a row to ${half}, seed ${seed}\n`);
console.log(
  '| track | tempo | bar lines | key | form among those named | form itself | forms named | chords | times real time |',
);
console.log('|---|---:|---:|---:|---:|---:|---:|---:|---:|');
for (const { name, plan, lead = false, spoil = asItIs } of ROWS) {
  if (only !== undefined && !name.includes(only)) continue;
  const tracks = tracksOf(half as Half, plan, Number(count), { lead, seed: Number(seed) });
  const heard = tracks.map((track) => hear(track, spoil));
  const judged = heard.map((each) => each.judged);
  const share = (of: (each: Judged) => boolean): string =>
    sayShare(judged.filter(of).length, judged.length);
  const mean = (of: (each: Judged) => number): number =>
    judged.reduce((sum, each) => sum + of(each), 0) / judged.length;
  const total = (of: (each: (typeof heard)[number]) => number): number =>
    heard.reduce((sum, each) => sum + of(each), 0);
  const cells = [
    name,
    share(({ right }) => right.tempo),
    share(({ right }) => right.downbeat),
    share(({ right }) => right.key),
    share(({ right }) => right.form),
    share(({ formAlone }) => formAlone),
    mean(({ named }) => named).toFixed(1),
    (100 * mean(({ chords }) => chords)).toFixed(1),
    (total(({ seconds }) => seconds) / total(({ spent }) => spent)).toFixed(0),
  ];
  console.log(`| ${cells.join(' | ')} |`);
  if (process.env.ANSWERS !== undefined)
    appendFileSync(
      process.env.ANSWERS,
      judged.map((each) => `${JSON.stringify({ name, ...each })}\n`).join(''),
    );
}
