import { mkdirSync, writeFileSync } from 'node:fs';
import { applySwing, writeMidi } from '@reedplate/interchange';
import { type Line, makeLine, secondsAt, type TimedNote } from '@reedplate/line';
import { findPhrases, formatPhrase, type Phrase } from '@reedplate/practice';
import { renderWave } from '../lib/render-midi.js';
import { placeOwn } from './place-own.js';
import { canRender, hearMidi } from './sound.js';

// Every phrase of the catalogue to be heard, 25 in a file, on a harp in C, each over its chords and two seconds apart:
//   npx tsx --tsconfig tsconfig.json scripts/practice/phrase-sounds.ts <folder>
// writes MIDI, a list of what sounds when, and WAVE where fluidsynth is; and listens to the harp of what it rendered.

const IN_FILE = 25;
/** Quarters a minute: 60 felt beats of 12/8. */
const TEMPO = 90;
const GAP = 3 * 960;
const PIANO = 1;
const CHORD_OCTAVE = 48;

/** A file of phrases: what the harp plays, the chords under it, and when each phrase begins. */
interface SoundSheet {
  readonly harp: Line;
  readonly chords: Line;
  readonly list: readonly string[];
}

function sheetOf(phrases: readonly Phrase[]): SoundSheet {
  const harp: TimedNote[] = [];
  const chords: TimedNote[] = [];
  const starts: number[] = [];
  let at = 0;
  for (const phrase of phrases) {
    const { chart, line } = placeOwn(phrase);
    starts.push(at);
    const played = applySwing(line, { feel: phrase.feel });
    harp.push(...played.notes.map((note) => ({ ...note, start: note.start + at })));
    for (const { start, end, chord } of chart.spans) {
      for (const { pitchClass } of chord?.tones ?? []) {
        const pitch = CHORD_OCTAVE + pitchClass;
        chords.push({ start: start + at, duration: end - start, pitch, velocity: 40 });
      }
    }
    at += (chart.spans.at(-1)?.end ?? 0) + GAP;
  }
  const harpLine = makeLine(harp, { tempo: TEMPO });
  const list = phrases.map((phrase, index) => {
    const seconds = secondsAt(starts[index] ?? 0, harpLine);
    return `${seconds.toFixed(0).padStart(4)} s  ${phrase.id}: ${formatPhrase(phrase)}`;
  });
  return { harp: harpLine, chords: makeLine(chords, { tempo: TEMPO }), list };
}

const [folder] = process.argv.slice(2);
if (folder === undefined) throw new Error('say which folder to write to');
mkdirSync(folder, { recursive: true });
const all = findPhrases();
const totals = { alone: 0, right: 0, together: 0, loud: 0 };
for (let first = 0; first < all.length; first += IN_FILE) {
  const { harp, chords, list } = sheetOf(all.slice(first, first + IN_FILE));
  const last = Math.min(first + IN_FILE, all.length);
  const name = `${folder}/phrases-${first + 1}-to-${last}`;
  const parts = [
    { name: 'Harp', program: 23, line: harp },
    { name: 'Chords', program: PIANO, line: chords },
  ];
  writeFileSync(`${name}.mid`, writeMidi({ line: harp, parts }));
  writeFileSync(`${name}.txt`, `${list.join('\n')}\n`);
  if (!canRender()) continue;
  renderWave(`${name}.mid`, `${name}.wav`);
  const heard = hearMidi(writeMidi({ line: harp }));
  totals.alone += heard.alone;
  totals.right += heard.right;
  totals.together += heard.together;
  totals.loud += heard.loud;
  for (const fault of heard.faults) console.log(`${name}: ${fault}`);
}
console.log(
  canRender()
    ? `${all.length} phrases: ${totals.right} of ${totals.alone} single notes within 50 cents, ${totals.loud} of ${totals.together} notes of chords heard`
    : `${all.length} phrases written as MIDI; fluidsynth is not here`,
);
