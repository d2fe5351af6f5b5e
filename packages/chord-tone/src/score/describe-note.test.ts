import { makeChart, parseForm } from '@reedplate/form';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyChart, anyMelody } from '../arbitraries.fixture.js';
import { describeNote } from './describe-note.js';
import { NOTE_CLASSES } from './note-class.js';
import { play } from './play.fixture.js';
import { scoreLine } from './score-line.js';
import { SCORE_WEIGHTS } from './weights.js';

const blues = makeChart('basic', 'G');

function reasonsOf(line: string, chart = blues): readonly string[] {
  return scoreLine(play(line), chart, { swing: 1 }).notes.map(describeNote);
}

describe('describeNote', () => {
  it.each([
    ['a root', 'G4@0', 'bar 1, beat 1: G4 (1 over G7): the root of the chord; counts 1'],
    [
      'a turn of the blues',
      'Bb4@0.5/0.5 B4@1',
      'bar 1, the and of 1: Bb4 (b3 over G7): a turn of the blues, which leads on as the style has it; counts 0.8',
    ],
    [
      'a blue note that does not',
      'Bb4@0',
      'bar 1, beat 1: Bb4 (b3 over G7): a blue note, at home in the style; counts 0.5',
    ],
    [
      'a passing note',
      'B4@0 C5@1 D5@2',
      'bar 1, beat 2: C5 (4 over G7): a passing note, by step on to a chord tone; counts 0.6',
    ],
    [
      'a push',
      'B4@0 E5@15.5/2',
      'bar 4, the and of 4: E5 (3 over C7), struck before the change: a guide tone, which tells the chord from others; counts 1',
    ],
    [
      'a clash',
      'F#4@0/2',
      'bar 1, beat 1: F#4 (7 over G7): a clash, rough against the chord and held, and it does not resolve; counts 0',
    ],
  ])('describeNote says why of %s', (_, line, reason) => {
    expect(reasonsOf(line)).toContain(reason);
  });

  it('describeNote says what is held into a chord, and what no chord judges', () => {
    const [struck, held] = reasonsOf('G4@15/2');
    expect(struck).toMatch(/^bar 4, beat 4: G4 \(1 over G7\): the root/u);
    expect(held).toMatch(/^bar 5, beat 1: G4 \(5 over C7\), held from the chord before: a tone/u);
    const broken = makeChart(parseForm('| N.C. | I7 |'), 'G');
    expect(reasonsOf('G4@0', broken)).toEqual(['bar 1, beat 1: G4: no chord sounds; not counted']);
  });

  it('describeNote has a reason of its own for every class', () => {
    const credit = { ...SCORE_WEIGHTS.credit, root: 1 / 3 };
    const [note] = scoreLine(play('G4@0'), blues, { weights: { credit } }).notes;
    expect(note && describeNote(note)).toMatch(/; counts 0\.33$/u);
    const said = NOTE_CLASSES.map((name) => note && describeNote({ ...note, class: name }));
    expect(new Set(said).size).toBe(NOTE_CLASSES.length);
  });

  it('describeNote names place, note and chord of whatever is played, and no long figure', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, (line, chart) => {
        for (const note of scoreLine(line, chart).notes) {
          const said = describeNote(note);
          expect(said).toMatch(/^(?:bar \d+|pickup), /u);
          expect(said).toContain(`: ${note.name}`);
          if (note.chord !== null) expect(said).toContain(`(${note.degree} over ${note.chord})`);
          expect(said).not.toMatch(/\d\.\d{3}/u);
        }
      }),
      { numRuns: 50 },
    );
  });
});
