import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { readAbc, readMidi } from '@reedplate/interchange';
import { ROOT } from '../lib/root.mjs';

// Reads files that others wrote with our readers and with other people's: ABC with abcjs and abc2midi,
// MIDI with @tonejs/midi. Prints how many agree in every pitch, time and length, and lists the others.
// Run after install-outside.sh: npx tsx scripts/interchange/compare-readers.ts FOLDER...
const require = createRequire(`${ROOT}packages/interchange/package.json`);
const abcjs = require('abcjs') as typeof import('abcjs');
const { Midi } = require('@tonejs/midi') as { readonly Midi: new (bytes: Uint8Array) => TheirMidi };

interface Note {
  readonly start: number;
  readonly duration: number;
  readonly pitch: number;
}

interface TheirMidi {
  readonly header: { readonly ppq: number };
  readonly tracks: readonly {
    readonly notes: readonly {
      readonly ticks: number;
      readonly durationTicks: number;
      readonly midi: number;
    }[];
  }[];
}

const folder = mkdtempSync(join(tmpdir(), 'reedplate-compare-'));
const agreed = new Map<string, { same: number; readonly others: string[] }>();

function note(what: string, name: string, isSame: boolean): void {
  const tally = agreed.get(what) ?? { same: 0, others: [] };
  agreed.set(what, tally);
  if (isSame) tally.same += 1;
  else tally.others.push(name);
}

/** abc2midi lets notes go early and sets the notes of a chord apart. */
const LOOSE = 45;

function agree(ours: readonly Note[], theirs: readonly Note[], most: number): boolean {
  const shift =
    Math.min(...theirs.map(({ start }) => start)) - Math.min(...ours.map(({ start }) => start));
  const inOrder = (notes: readonly Note[]): readonly Note[] =>
    [...notes].sort((a, b) => Math.round((a.start - b.start) / 120) || a.pitch - b.pitch);
  const read = inOrder(theirs);
  return (
    ours.length === theirs.length &&
    inOrder(ours).every(({ start, duration, pitch }, at) => {
      const other = read[at] as Note;
      const isTimely = Math.abs(other.start - shift - start) <= most;
      return other.pitch === pitch && isTimely && Math.abs(other.duration - duration) <= most;
    })
  );
}

/** Fields that are no part of the standard are left out: abcjs plays their letters. */
const OTHER_FIELDS = /^[PYEF]:.*\n/gmu;

function compareTunes(file: string): void {
  const tunes = readFileSync(file, 'latin1').split(/\r?\n(?=X:)/u);
  for (const text of tunes.filter((tune) => /^X:/mu.test(tune))) {
    const tune = `${text.slice(text.indexOf('X:')).replaceAll('\r', '').replace(OTHER_FIELDS, '').trim()}\n`;
    const title = /^T:(.*)$/mu.exec(tune)?.[1] ?? '';
    const [inOctave] = readAbc(tune, { accidentals: 'octave' });
    const [everywhere] = readAbc(tune);
    if (inOctave === undefined || everywhere === undefined) continue;
    note('ABC as abcjs 6.7.2', title, agree(inOctave.line.notes, abcjsNotes(tune), 5));
    note('ABC as abc2midi', title, agree(everywhere.line.notes, abc2midiNotes(tune), LOOSE));
  }
}

function abcjsNotes(tune: string): readonly Note[] {
  const played = abcjs.parseOnly(tune)[0]?.setUpAudio({ chordsOff: true }) as unknown as {
    readonly tracks: readonly (readonly (Note & { readonly cmd: string })[])[];
  };
  return played.tracks
    .flat()
    .filter(({ cmd }) => cmd === 'note')
    .map(({ start, duration, pitch }) => ({
      start: start * 3840,
      duration: duration * 3840,
      pitch,
    }));
}

function abc2midiNotes(tune: string): readonly Note[] {
  const [abc, midi] = [join(folder, 'a.abc'), join(folder, 'a.mid')];
  writeFileSync(abc, tune.replace(/^K:.*$/mu, '$&\n%%MIDI gchordoff'), 'latin1');
  execFileSync('abc2midi', [abc, '-o', midi, '-silent'], { stdio: 'pipe' });
  return readMidi(readFileSync(midi)).line.notes;
}

function compareMidi(file: string): void {
  const bytes = readFileSync(file);
  const { parts } = readMidi(bytes, { bends: false });
  const theirs = new Midi(bytes);
  const scale = 960 / theirs.header.ppq;
  const notes = theirs.tracks.flatMap((track) =>
    track.notes.map(({ ticks, durationTicks, midi }) => ({
      start: ticks * scale,
      duration: durationTicks * scale,
      pitch: midi,
    })),
  );
  const sounding = notes.filter(({ duration }) => duration >= 0.5);
  const ours = parts.flatMap(({ line }) => line.notes);
  note('MIDI as @tonejs/midi 2.0.28', file, sameNotes(ours, sounding));
}

/** Ticks that a time may be off where the file's own do not divide ours. */
const ROUNDED = 1.5;

/** Files hold notes that begin together in any order. */
function sameNotes(ours: readonly Note[], theirs: readonly Note[]): boolean {
  const inOrder = (notes: readonly Note[]): readonly Note[] =>
    [...notes].sort((a, b) => a.pitch - b.pitch || a.start - b.start || a.duration - b.duration);
  const read = inOrder(theirs);
  return (
    ours.length === theirs.length &&
    inOrder(ours).every(({ start, duration, pitch }, at) => {
      const other = read[at] as Note;
      const isTimely = Math.abs(other.start - start) <= ROUNDED;
      return other.pitch === pitch && isTimely && Math.abs(other.duration - duration) <= ROUNDED;
    })
  );
}

for (const root of process.argv.slice(2)) {
  for (const file of readdirSync(root, { recursive: true, encoding: 'utf8' }).sort()) {
    if (extname(file) === '.abc') compareTunes(join(root, file));
    if (extname(file) === '.mid') compareMidi(join(root, file));
  }
}
rmSync(folder, { recursive: true });
for (const [what, { same, others }] of agreed) {
  console.log(`${what}: ${same} of ${same + others.length}`);
  for (const name of others) console.log(`- ${name}`);
}
