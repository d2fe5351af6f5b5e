import { readFileSync, writeFileSync } from 'node:fs';
import { scoreLine } from '@reedplate/chord-tone';
import { makeChart } from '@reedplate/form';
import { songKeyOf } from '@reedplate/position';
import {
  composeLine,
  findPhrases,
  formatPhrase,
  makeLesson,
  type Phrase,
  phraseChart,
  placePhrase,
} from '@reedplate/practice';
import {
  distance,
  intervalsOf,
  melodyOf,
  repeatedPatterns,
  type Shares,
  sharesOf,
} from './practice/yardsticks.js';

// Writes docs/practice.md: npx tsx scripts/practice-page.ts [solos.ndjson]

const [solosFile] = process.argv.slice(2);
const round = (value: number): string => value.toFixed(2);

interface Measured {
  readonly name: string;
  readonly lines: readonly (readonly number[])[];
}

/** Where the MIDI pitch of a note stands in a row of the data. */
const PITCH = 8;

/** Solos by number. */
function readSolos(file: string): Measured {
  const lines = readFileSync(file, 'utf8')
    .split('\n')
    .filter((row) => row !== '')
    .map((row) => {
      const { notes } = JSON.parse(row) as { notes: readonly (readonly number[])[] };
      return notes.map((note) => note[PITCH] ?? 0);
    });
  return { name: `${lines.length} real solos (Weimar Jazz Database, 2017, ODbL 1.0)`, lines };
}

const chart = makeChart('basic', 'G');

function placedMelody(phrase: Phrase): readonly number[] {
  const own = phraseChart(phrase, songKeyOf('C', phrase.position).tonic);
  const placed = placePhrase(phrase, { chart: own, harp: 'C', level: phrase.level });
  return placed.playable ? melodyOf(placed.line) : [];
}

const composed = Array.from(
  { length: 40 },
  (_, at) => composeLine(chart, 'C', { seed: at + 1 }).line,
);

/** The notes of a line, each drawn without regard to the one before. */
function walk(pitches: readonly number[], seed: number): readonly number[] {
  const notes = [...new Set(pitches)].sort((a, b) => a - b);
  let state = seed;
  return pitches.map(() => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return notes[Math.floor((state / 2147483648) * notes.length)] ?? 0;
  });
}

const sets: readonly Measured[] = [
  { name: 'choruses of the catalogue', lines: findPhrases({ kind: 'chorus' }).map(placedMelody) },
  { name: '40 composed choruses', lines: composed.map(melodyOf) },
  {
    name: 'the same notes in random order',
    lines: composed.map((line, at) => walk(melodyOf(line), at + 1)),
  },
];
const solos = solosFile === undefined ? undefined : readSolos(solosFile);
const intervals = ({ lines }: Measured): Shares => sharesOf(lines.flatMap(intervalsOf));
const rows = [...(solos ? [solos] : []), ...sets].map((set) => {
  const patterns =
    set.lines.reduce((sum, line) => sum + repeatedPatterns(line), 0) / set.lines.length;
  const far = solos === undefined ? '' : round(distance(intervals(set), intervals(solos)));
  const steps = set.lines.flatMap(intervalsOf).map(Number);
  const small = steps.filter((step) => Math.abs(step) <= 2).length / steps.length;
  return `| ${set.name} | ${far} | ${round(small)} | ${round(patterns)} |`;
});

const scored = findPhrases()
  .map((phrase) => {
    const own = phraseChart(phrase, songKeyOf('C', phrase.position).tonic);
    const placed = placePhrase(phrase, { chart: own, harp: 'C', level: phrase.level });
    if (!placed.playable) throw new Error(`${phrase.id} is not playable`);
    return { phrase, fit: scoreLine(placed.line, own).measures.chordFit ?? 0 };
  })
  .sort((a, b) => a.fit - b.fit || (a.phrase.id < b.phrase.id ? -1 : 1));

const sheet = findPhrases().map(
  (phrase) =>
    `| ${phrase.id} | ${phrase.kind} | ${phrase.position} | ${phrase.grade} | ${phrase.harmony.replaceAll('|', '\\|')} | \`${formatPhrase(phrase).replaceAll('|', '\\|')}\` |`,
);
const lessons = [
  makeLesson({ form: 'quick-change', key: 'A', level: 'natural' }),
  makeLesson({ form: 'minor', key: 'Dm', harp: 'C' }),
  makeLesson({ form: 'jazz', key: 'F' }),
].map(
  ({ title, steps }) => `- ${title}: ${steps.map((step) => step.title.toLowerCase()).join('; ')}.`,
);

const page = `# Practice

Written by \`scripts/practice-page.ts\`; every figure on this page is computed by it.

## Yardsticks

Distance is half the sum of differences between shares of intervals: 0 is the same, 1 has nothing in common.
A pattern is four intervals in a row that come again in the same line.

| lines | distance from real solos | steps of two semitones and less | share of patterns that repeat |
|---|---|---|---|
${rows.join('\n')}
${solos === undefined ? '\nNo solos were given: distances are left out.\n' : ''}
## The ten that fit their chords least

By score, each over the chords it was made for. A flat fifth in passing is outside its chord and lowers this figure.

${scored
  .slice(0, 10)
  .map(({ phrase, fit }) => `- ${phrase.id}: ${round(fit)}; ${phrase.trains}`)
  .join('\n')}

## What was changed

The checks of the catalogue found these ten, and they were changed:

- stable-call held a fourth over I: it passes through it now.
- stair and twelfth-riff ended on the sixth: they come to rest on the fifth.
- lantern has three notes in a beat: it is grade 2, not 1.
- in-from-five-low, knock-chorus, quick-change-chorus and slow-chorus moved four holes at once, cross-leading five: they
  keep to what their grades allow.
- turn-minor-descent was made for V without its seventh, which is not the turnaround of the form package.

Read as a new instructor would, the first lessons had the same note on 2 draw and on 3 blow in turn, thirds and sevenths
on holes 7 to 10, tab without bar lines, and every place of a chord in words. Now a note that both holes give has
one place in a phrase, exercises and riffs of a lesson stay on holes 1 to 7, tab has bar lines, and the smallest shapes
alone are named. They were not yet played through a synthesiser and criticised by ear.

## Three lessons

${lessons.join('\n')}

## All phrases

For a harp in C in the position of the phrase: ${sheet.length} of them.

| id | kind | position | grade | chords | tab |
|---|---|---|---|---|---|
${sheet.join('\n')}
`;
writeFileSync('docs/practice.md', page);
process.stdout.write(`${rows.join('\n')}\n`);
