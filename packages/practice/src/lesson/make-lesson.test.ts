import { makePlayer, soundings } from '@reedplate/layout';
import { describe, expect, it } from 'vitest';
import { LESSON_GOALS } from './lesson.js';
import { makeLesson } from './make-lesson.js';
import { shareMinutes } from './share-minutes.js';

describe('makeLesson', () => {
  it.each([
    [
      'a beginner, quick change in A',
      { form: 'quick-change', key: 'A', level: 'natural', harp: 'D' },
      2,
    ],
    ['minor in Dm, third position', { form: 'minor', key: 'Dm', harp: 'C' }, 3],
    ['jazz blues in F', { form: 'jazz', key: 'F' }, undefined],
  ] as const)('makeLesson plans %s', (_, options, position) => {
    const { steps, minutes, harp, position: found, words } = makeLesson(options);
    expect(steps.map(({ goal }) => goal)).toEqual([...LESSON_GOALS]);
    expect(minutes).toBe(20);
    if (position !== undefined) expect(found).toBe(position);
    expect(words[0]).toMatch(/^The chords of /u);
    const level = 'level' in options ? options.level : 'bends';
    const had = new Set(soundings(harp, { level }).map((each) => JSON.stringify(each)));
    for (const { soundings: played, line, loop, tab, judged } of steps) {
      expect(played.flat().every((each) => had.has(JSON.stringify(each)))).toBe(true);
      expect(line.notes.length).toBeGreaterThan(0);
      expect(loop.to).toBeGreaterThanOrEqual(loop.from);
      expect(tab.length).toBeGreaterThan(5);
      expect(judged).toMatch(/^By /u);
    }
  });

  it('makeLesson keeps to the bends of the student', () => {
    const level = makePlayer(['natural', { technique: 'bend', holes: [4], breath: 'draw' }]);
    const { steps, harp } = makeLesson({ form: 'basic', key: 'G', harp: 'C', level });
    const had = new Set(soundings(harp, { level }).map((each) => JSON.stringify(each)));
    expect(
      steps.flatMap((step) => step.soundings.flat()).every((each) => had.has(JSON.stringify(each))),
    ).toBe(true);
  });

  it('makeLesson warns where breath is drilled', () => {
    const { steps } = makeLesson({ form: 'basic', key: 'G' });
    expect(steps.filter(({ cautions }) => cautions.length > 0).map(({ goal }) => goal)).toEqual([
      'chords',
    ]);
  });

  it('makeLesson picks from the harps owned, and works on the goals asked for', () => {
    const { harp, steps } = makeLesson({
      form: 'basic',
      key: 'G',
      own: ['F', 'C'],
      goals: ['riff', 'changes'],
    });
    expect(harp.key).toBe('C');
    expect(steps.map(({ goal }) => goal)).toEqual(['changes', 'riff']);
  });

  it.each([
    ['too few minutes', { minutes: 2 }, 'NUMBER_RANGE'],
    ['a goal there is not', { goals: ['licks'] }, 'OPTION_UNKNOWN'],
    ['no goals', { goals: [] }, 'LIST_EMPTY'],
    ['a form there is not', { form: 'basics' }, 'FORM_UNKNOWN'],
    ['an option there is not', { tempo: 90 }, 'OPTION_UNKNOWN'],
  ])('makeLesson refuses %s', (_, more, code) => {
    const options = { form: 'basic', key: 'G', ...more } as never;
    expect(() => makeLesson(options)).toThrow(expect.objectContaining({ code }));
  });
});

describe('shareMinutes', () => {
  it('shareMinutes adds up to the lesson, a minute at least for each goal', () => {
    for (const minutes of [6, 7, 20, 45, 180]) {
      const shares = shareMinutes(minutes, LESSON_GOALS);
      expect(shares.reduce((sum, each) => sum + each, 0)).toBe(minutes);
      expect(Math.min(...shares)).toBeGreaterThanOrEqual(1);
    }
  });
});
