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
  ['scale walk', (solo) => scaleWalk(solo)],
  ['tonic alone', tonicAlone],
];

/** A walk has luck: each solo is compared with so many. */
const WALKS = 8;

function comparisons(halves: readonly Half[]): string {
  const said = halves.map(({ name, solos }) => {
    const beaten = (rivals: (solo: Solo) => readonly Solo[]): string => {
      const won = solos.flatMap((solo) => {
        const own = totalOf(solo);
        return rivals(solo).map((rival) => own > totalOf(rival));
      });
      return percent(won.filter(Boolean).length, won.length);
    };
    const walks = (solo: Solo): readonly Solo[] =>
      Array.from({ length: WALKS }, (_, at) => scaleWalk(solo, at));
    return `Of the solos ${name}, ${beaten((solo) => [tonicAlone(solo)])} are above their own tonic-only version; of their walks in the scale they are above ${beaten(walks)}.`;
  });
  return `${said.join(' ')} (${WALKS} walks a solo, seeded.)`;
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

function scaleWalk(solo: Solo, turn = 0): Solo {
  const { pitchClass, mode } = parseKey(solo.chart.key);
  const steps = mode === 'minor' ? [0, 2, 3, 5, 7, 8, 10] : [0, 2, 4, 5, 7, 9, 10];
  const ladder = [0, 12].flatMap((octave) => steps.map((step) => 60 + pitchClass + octave + step));
  const random = seededRandom(solo.id + 1000 * turn);
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
  let [tried, rose, worse, follows] = [0, 0, 0, 0];
  for (const solo of halves.flatMap(({ solos }) => solos)) {
    const before = scored(solo);
    for (const after of emptied(solo).map(scored)) {
      tried += 1;
      if (after.total <= before.total) continue;
      rose += 1;
      if (fitOf(after) > fitOf(before)) worse += 1;
      else if ((after.following?.above ?? 0) > (before.following?.above ?? 0)) follows += 1;
    }
  }
  return `## Four bars emptied

More silence after the same notes never raises a total: a law, tested on random lines, and so is that notes left
out of a line of chord tones never raise it. Leaving notes out of other lines can, where they were wrong: a rest is
better than a wrong note, as a teacher says, and no score that holds this can promise the other. In the solos
${tried} times four bars were emptied; the total did not rise in ${percent(tried - rose, tried)}. Of the ${rose} others, in ${worse} what is left fits
its chords better than the whole did, and in ${follows} it follows them further beyond chance.`;
}

/** A solo with four bars emptied, here and there. */
function emptied(solo: Solo): readonly Solo[] {
  const { notes } = solo.line;
  const step = Math.max(EMPTIED, Math.floor(solo.chart.bars / TRIED));
  const count = Math.max(0, Math.floor((solo.chart.bars - EMPTIED) / step) + 1);
  const kept = Array.from({ length: count }, (_, at) =>
    notes.filter(({ start }) => start < at * step * BAR || start >= (at * step + EMPTIED) * BAR),
  );
  return kept
    .filter(({ length }) => length > 0 && length < notes.length)
    .map((left) => ({ ...solo, line: makeLine(left) }));
}

function fitOf({ measures }: Score): number {
  return measures.chordFit ?? 0;
}
