import { writeFileSync } from 'node:fs';
import { findPhrases, formatPhrase, makeLesson } from '@reedplate/practice';
import { readSolos } from '../packages/chord-tone/validity/read-solos.js';
import { LESSONS, lessonsByEar } from './practice/by-ear.js';
import { compareMaterials } from './practice/compare.js';
import {
  arpeggios,
  CHART,
  catalogueChoruses,
  cataloguePhrases,
  composed,
  composedLines,
  inRandomOrder,
  type Material,
  solosOf,
  tunesOf,
  withoutRepeat,
} from './practice/material.js';
import { scorePhrases, totalsOf } from './practice/scores.js';
import { canRender } from './practice/sound.js';
import { median, melodyOf, variety } from './practice/yardsticks.js';

// Writes docs/practice.md: npx tsx scripts/practice-page.ts [solos.ndjson [folder of tunes]]

const [solosFile, tunesFolder] = process.argv.slice(2);
const round = (value: number): string => value.toFixed(2);

const choruses = composedLines('AAB');
const usual = composed(choruses, 'AAB');
const solos = solosFile === undefined ? undefined : readSolos(solosFile);
const materials = [
  ...(solos === undefined ? [] : [solosOf(solos)]),
  ...(tunesFolder === undefined ? [] : [tunesOf(tunesFolder)]),
  cataloguePhrases(),
  catalogueChoruses(),
  usual,
  withoutRepeat(usual),
  composed(composedLines('ABC'), 'ABC'),
  inRandomOrder(usual),
  arpeggios(),
];
const table = compareMaterials(materials);

const scored = [...scorePhrases()].sort(
  (a, b) => a.fit - b.fit || (a.phrase.id < b.phrase.id ? -1 : 1),
);
const whole = scored.filter(({ bars }) => bars >= 4);
const lines = totalsOf(choruses.map((line) => ({ line, chart: CHART })));
const ofSolos = solos && totalsOf(solos);
const least = ofSolos && median(ofSolos);
const atLeast = (totals: readonly number[]): string =>
  least === undefined
    ? ''
    : `${totals.filter((total) => total >= least).length} of ${totals.length}`;
const scoreRow = (name: string, totals: readonly number[]): string =>
  `| ${name} | ${median(totals).toFixed(0)} | ${Math.min(...totals).toFixed(0)} | ${atLeast(totals)} |`;
const scoreRows = [
  ...(ofSolos === undefined ? [] : [scoreRow('the real solos', ofSolos)]),
  scoreRow(
    'phrases of four bars and more',
    whole.map(({ total }) => total),
  ),
  scoreRow('40 composed choruses', lines),
];
const varietyOf = ({ lines: all }: Material): string =>
  round(all.reduce((sum, { line }) => sum + variety(melodyOf(line)), 0) / all.length);

const sheet = findPhrases().map(
  (phrase) =>
    `| ${phrase.id} | ${phrase.kind} | ${phrase.position} | ${phrase.grade} | ${phrase.harmony.replaceAll('|', '\\|')} | \`${formatPhrase(phrase).replaceAll('|', '\\|')}\` |`,
);
const heard = canRender()
  ? lessonsByEar()
  : { rows: [], faults: ['fluidsynth was not there: nothing was heard'] };
const lessons = LESSONS.map((options) => makeLesson(options)).map(
  ({ title, steps }) => `- ${title}: ${steps.map((step) => step.title.toLowerCase()).join('; ')}.`,
);

const page = `# Practice

Written by \`scripts/practice-page.ts\`; every figure on this page is computed by it.

## Yardsticks

The first four columns are distances from the lines of the first row, half the sum of all differences between the
shares of each value: 0 is the same, 1 has nothing in common. Lengths are counted in sixteenths; a phrase is what is
played without a rest of a quarter, counted in quarters. Then: share of the time that rests; of steps of two semitones and
less; of patterns of four intervals that come again in the same line; and of notes that begin a pattern which comes
again anywhere in the set (Norgaard 2014, Music Perception 31(3), counts 82.6 % in a larger set of jazz solos).

${table.join('\n')}
${solos === undefined ? '\nNo solos were given: the first row is what else came first.\n' : ''}
Composed choruses are drawn by what was learned from our phrases, so those are what they are like; jazz solos go by
smaller steps than lines that are written for a first year on the harp.

Variety, different patterns among all: ${materials.map((each) => `${each.name} ${varietyOf(each)}`).join('; ')}.

## Scores

What a student would read, from 0 to 100; the last column counts those that reach the median of the real solos.

| lines | median | least | at least the median of the solos |
|---|---:|---:|---:|
${scoreRows.join('\n')}

That a phrase comes again over IV with few notes moved is heard, now and then, as staying on I: those are the least ones.

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
alone are named.

Read again bar by bar, with the tab in the hand:

- Bars 2 and 9 of the chords: IV was struck on 4 to 6 blow after 2 to 4 draw, V as a split over 4 and 6 draw, and the same
  chord in another inversion each time. Now each chord has one grip of neighbouring holes: 2 to 4 draw, 2 to 4 blow, 4 draw.
- Bars 2 and 5 of the thirds and sevenths: the line leaped to 7 blow and back. Now each note lies near the one before, and the seventh of a chord leads to the third of the next: 5 draw into 5 blow.
- Riff and turnaround were the same for a first lesson and for a player with overblows. Now they are of the student's
  grade; riffs with bends and phrases with overblows were missing and were added.
- The riff in D minor lay in the low octave with deep bends in passing. What is written unbent is now put where it is unbent.
- The model chorus left no room for an answer. Now each call of two bars is followed by two bars of rest.
- The lines as MIDI were straight, at one tempo, without their chords. They swing now, over their chords, at the tempo that
  the student begins with.
- Tab ran on in one line. It is printed four bars in a row, under their chords.

## By ear

Each step as MIDI at its first tempo, through fluidsynth, by a pitch tracker in the middle of each note that sounds for 110 ms
or longer: notes alone that lie within half a semitone of what is written, and notes of chords that are louder than the
semitones beside them. That says that the sound is the writing; whether it is music is said above.

| key | step | tempo | notes alone | notes of chords |
|---|---|---:|---:|---:|
${heard.rows.join('\n')}
${heard.faults.map((fault) => `\n- ${fault}`).join('')}

## Three lessons

${lessons.join('\n')}

## All phrases

For a harp in C in the position of the phrase: ${sheet.length} of them.

| id | kind | position | grade | chords | tab |
|---|---|---|---|---|---|
${sheet.join('\n')}
`;
writeFileSync('docs/practice.md', page);
process.stdout.write(`${[...table, ...scoreRows].join('\n')}\n`);
