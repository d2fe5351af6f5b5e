import { type Chart, makeChart, parseForm } from '@reedplate/form';
import { type Line, makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyTonic } from '../arbitraries.fixture.js';
import { scoreLine } from './score-line.js';
import type { NoteScore } from './score-types.js';
import { SCORE_WEIGHTS } from './weights.js';

/** Leaning notes count as resolved here: the draw does not know lengths. */
const OPTIONS = {
  swing: 1,
  weights: { credit: { leaning: SCORE_WEIGHTS.resolvedCredit } },
} as const;

interface Take {
  readonly wait: number;
  readonly duration: number;
  readonly pitch: number;
}

/** Notes with rests between, so that no two of them can tie whatever their pitches are. */
const anyTakes = fc.array(
  fc.record({
    wait: fc.integer({ min: 70, max: 900 }),
    duration: fc.integer({ min: 50, max: 900 }),
    pitch: fc.integer({ min: 60, max: 72 }),
  }),
  { minLength: 1, maxLength: 4 },
);

function lineOf(takes: readonly Take[]): Line {
  let at = 0;
  const notes = takes.map(({ wait, duration, pitch }) => {
    const start = at + wait;
    at = start + duration;
    return { start, duration, pitch };
  });
  return makeLine(notes);
}

/** The credit of a part where its note and the next have these pitches, and no other note is there. */
function creditOf(
  part: NoteScore,
  line: Line,
  pitches: readonly [number, number],
  chart: Chart,
): number {
  const own = line.notes[part.index];
  const next = line.notes[part.index + 1];
  const [pitch, after] = pitches;
  const pair = [
    ...(own === undefined ? [] : [{ ...own, pitch }]),
    ...(next === undefined ? [] : [{ ...next, pitch: after }]),
  ];
  const find = (notes: readonly NoteScore[]): NoteScore | undefined =>
    notes.find(({ start, index }) => index === 0 && start === part.start);
  const judged = find(scoreLine(makeLine(pair), chart, OPTIONS).notes);
  if (judged?.class !== 'idiom') return judged?.credit ?? Number.NaN;
  // The draw knows no turns: what the note is worth alone, or resolved by step.
  const alone = find(scoreLine(makeLine(pair.slice(0, 1)), chart, OPTIONS).notes)?.credit ?? 0;
  return judged.resolvesTo === null ? alone : Math.max(alone, SCORE_WEIGHTS.resolvedCredit);
}

describe('shuffledFit by listing', () => {
  it('shuffledFit is the mean over every pitch drawn for a note and for the one after it', () => {
    const anyForm = fc.constantFrom(
      '| I7 | IV7 |',
      '| i | V7 |',
      '| I7 IV7 | V7 |',
      '| I13 | IV |',
    );
    fc.assert(
      fc.property(anyTakes, anyForm, anyTonic, (takes, form, key) => {
        const chart = makeChart(parseForm(form), key, { choruses: 2 });
        const line = lineOf(takes);
        const { notes, following } = scoreLine(line, chart, OPTIONS);
        const all = notes.reduce((sum, { weight }) => sum + weight, 0);
        const shares = takes.map(
          (_, at) =>
            notes.reduce((sum, note) => sum + (note.index === at ? note.weight : 0), 0) / all,
        );
        const mean = notes.reduce((sum, part) => {
          let expected = 0;
          takes.forEach((one, at) => {
            takes.forEach((next, after) => {
              const credit = creditOf(part, line, [one.pitch, next.pitch], chart);
              expected += (shares[at] ?? 0) * (shares[after] ?? 0) * credit;
            });
          });
          return sum + (part.weight / all) * expected;
        }, 0);
        expect(following?.shuffled).toBeCloseTo(mean, 9);
      }),
      { numRuns: 10 },
    );
  });
});
