import { type Score, scoreLine } from '@reedplate/chord-tone';
import { makeLine } from '@reedplate/line';
import { parseKey } from '@reedplate/pitch';
import { seededRandom } from './contrasts.js';
import type { Half } from './halves.js';
import type { Solo } from './read-solos.js';
import { quantile } from './statistics.js';
import { pitchShuffle } from './study.js';
import { table } from './table.js';

// What a total means: how often each kind of playing reaches it.

const LEVELS = [20, 40, 60, 80] as const;

/** Totals of solos, and of what they would be without the changes. */
export function scaleTable(halves: readonly Half[]): string {
  const rows = halves.flatMap(({ name, solos }) =>
    KINDS.map(([kind, make]) => {
      const totals = solos.map((solo) => totalOf(make(solo)));
      return [
        `${name}: ${kind}`,
        quantile(totals, 0.5).toFixed(0),
        ...LEVELS.map((level) =>
          percent(totals.filter((total) => total >= level).length, totals.length),
        ),
      ];
    }),
  );
  const head = ['', 'median', ...LEVELS.map((level) => `${level} and more`)];
  return `## What a total means

How often solos reach a total as played, and in the same rhythm: with their pitches shuffled, over a walk in
the scale of the key, on the tonic alone. Exercises that are made of chord tones alone lie above good
solos, whose passing notes are music and cost a little: the battery below says how they fare.

${table(head, rows)}

${comparisons(halves)}`;
}

const KINDS: readonly (readonly [string, (solo: Solo) => Solo])[] = [
  ['as played', (solo) => solo],
  ['pitches shuffled', (solo) => pitchShuffle(1).make(solo, seededRandom(solo.id))],
  ['scale walk', scaleWalk],
  ['tonic alone', tonicAlone],
];

function comparisons(halves: readonly Half[]): string {
  const said = halves.map(({ name, solos }) => {
    const beats = (make: (solo: Solo) => Solo): string =>
      percent(solos.filter((solo) => totalOf(solo) > totalOf(make(solo))).length, solos.length);
    return `Of the solos ${name}, ${beats(tonicAlone)} are above their own tonic-only version and ${beats(scaleWalk)} above a walk in the scale.`;
  });
  return said.join(' ');
}

function percent(part: number, whole: number): string {
  return `${Math.round((100 * part) / whole)} %`;
}

function scored({ line, chart }: Solo): Score {
  return scoreLine(line, chart);
}

function totalOf(solo: Solo): number {
  return scored(solo).total;
}

function tonicAlone(solo: Solo): Solo {
  const pitch = 60 + parseKey(solo.chart.key).pitchClass;
  return { ...solo, line: makeLine(solo.line.notes.map((note) => ({ ...note, pitch }))) };
}

function scaleWalk(solo: Solo): Solo {
  const { pitchClass, mode } = parseKey(solo.chart.key);
  const steps = mode === 'minor' ? [0, 2, 3, 5, 7, 8, 10] : [0, 2, 4, 5, 7, 9, 10];
  const ladder = [0, 12].flatMap((octave) => steps.map((step) => 60 + pitchClass + octave + step));
  const random = seededRandom(solo.id);
  let at = 7;
  const notes = solo.line.notes.map((note) => {
    at += random() < 0.5 ? -1 : 1;
    at = at < 0 ? 1 : at >= ladder.length ? ladder.length - 2 : at;
    return { ...note, pitch: ladder[at] ?? 60 };
  });
  return { ...solo, line: makeLine(notes) };
}

const TRIED = 6;

/** How often a total falls when a chord tone is moved to a clash, and why where it does not. */
export function clashCount(halves: readonly Half[]): string {
  let [tried, lower, fitLower] = [0, 0, 0];
  for (const solo of halves.flatMap(({ solos }) => solos)) {
    const before = scored(solo);
    const tones = before.notes.filter(({ class: kind, held }) => kind === 'root' && !held);
    const step = Math.max(1, Math.floor(tones.length / TRIED));
    for (let at = 0; at < tones.length; at += step) {
      const index = tones[at]?.index ?? 0;
      const notes = solo.line.notes.map((note, place) =>
        place === index ? { ...note, pitch: note.pitch + 1 } : note,
      );
      const after = scored({ ...solo, line: makeLine(notes) });
      tried += 1;
      if (after.total < before.total) lower += 1;
      else if ((after.measures.chordFit ?? 0) < (before.measures.chordFit ?? 0)) fitLower += 1;
    }
  }
  return `## A root moved to a clash

${tried} roots of the solos were moved up by a half step, one at a time. The total fell for ${percent(lower, tried)}. Of the
${tried - lower} others, ${fitLower} have a lower chord fit all the same: what chance would reach fell more, for the note was one
that fits many chords. In the rest the new note leads by step to the next, and is music.`;
}

const EMPTIED = 4;
const BAR = 3840;

/** How often a total falls when four bars of a solo are emptied, and why where it does not. */
export function silenceCount(halves: readonly Half[]): string {
  let [tried, lower, worse] = [0, 0, 0];
  for (const solo of halves.flatMap(({ solos }) => solos)) {
    const before = scored(solo);
    const step = Math.max(EMPTIED, Math.floor(solo.chart.bars / TRIED));
    for (let bar = 0; bar + EMPTIED <= solo.chart.bars; bar += step) {
      const isIn = ({ start }: { readonly start: number }) =>
        start >= bar * BAR && start < (bar + EMPTIED) * BAR;
      const notes = solo.line.notes.filter((note) => !isIn(note));
      if (notes.length === 0 || notes.length === solo.line.notes.length) continue;
      const after = scored({ ...solo, line: makeLine(notes) });
      tried += 1;
      if (after.total <= before.total) lower += 1;
      else if ((after.measures.chordFit ?? 0) > (before.measures.chordFit ?? 0)) worse += 1;
    }
  }
  return `## Four bars emptied

More silence after the same notes never raises a total: a law, tested on random lines. Leaving notes out can,
where they were wrong: a rest is better than a wrong note, as a teacher says, and no score that holds this can
promise the other. In the solos ${tried} times four bars were emptied; the total did not rise in ${percent(lower, tried)}. In ${worse} of
the ${tried - lower} others what is left fits its chords better than the whole did.`;
}
