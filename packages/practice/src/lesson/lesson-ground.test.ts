import { makeForm, parseForm } from '@reedplate/form';
import { makePlayer, makeTuning } from '@reedplate/layout';
import { describe, expect, it } from 'vitest';
import { makeLesson } from './make-lesson.js';

/** Where a lesson has less to go by than twelve bars of shuffle on a standard harp. */
describe('makeLesson, out of the common', () => {
  it('makeLesson over a waltz leaves out the riffs and turnarounds, which are all in four', () => {
    const { steps, minutes } = makeLesson({ form: 'waltz', key: 'G', minutes: 30 });
    expect(steps.map(({ goal }) => goal)).toEqual(['changes', 'chords', 'guide-tones', 'choruses']);
    expect(steps.every(({ line }) => line.metre === '3/4')).toBe(true);
    // Their minutes go to the others.
    expect(steps.reduce((sum, step) => sum + step.minutes, 0)).toBe(30);
    expect(minutes).toBe(30);
  });

  it.each(['eight-bar-minor-four', 'minor-six-eight'])('makeLesson is made over %s', (form) => {
    expect(makeLesson({ form, key: 'Am' }).steps.length).toBe(4);
  });

  it('makeLesson has no turnaround for a form of one bar', () => {
    const { steps } = makeLesson({ form: parseForm('I7'), key: 'G' });
    expect(steps.map(({ goal }) => goal)).not.toContain('turnaround');
    expect(steps.map(({ loop }) => loop)).toEqual(steps.map(() => ({ from: 1, to: 1 })));
  });

  it('makeLesson takes a turnaround of other chords where the catalogue has none for these', () => {
    const { steps } = makeLesson({
      form: parseForm('I7 | IV7 | V7 | N.C.'),
      key: 'G',
      goals: ['turnaround'],
    });
    expect(steps[0]?.loop).toEqual({ from: 3, to: 4 });
    expect(steps[0]?.line.notes.length).toBeGreaterThan(0);
  });

  it('makeLesson in a minor key makes a form in major minor', () => {
    const { chart, steps } = makeLesson({ form: 'basic', key: 'Dm', harp: 'C' });
    expect(chart.spans[0]?.chord?.symbol).toBe('Dm7');
    expect(steps).toHaveLength(6);
  });

  it('makeLesson knows forms and tunings of your own by their ids', () => {
    const form = makeForm(parseForm('I7 | IV7').bars, { id: 'two', name: 'Two bars' });
    const tuning = makeTuning({
      id: 'own',
      blow: 'C4 E4 G4 C5 E5 G5 C6 E6 G6 C7',
      draw: 'D4 G4 B4 D5 F#5 A5 B5 D6 F#6 A6',
    });
    const known = { forms: [form], tunings: [tuning] };
    const lesson = makeLesson({ form: 'two', key: 'G', harp: 'C own', known });
    expect(lesson.harp.tuning).toBe('own');
    expect(lesson.title).toMatch(/^Two bars in G/u);
    expect(makeLesson({ form: 'two', key: 'G', own: ['C own'], known }).harp.tuning).toBe('own');
    expect(() => makeLesson({ form: 'two', key: 'G', known: { form: [] } as never })).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN', value: 'form', nearest: 'forms' }),
    );
  });

  it('makeLesson refuses a player who has nothing on the harp, and says for which goals', () => {
    const level = makePlayer([{ technique: 'valved-bend' }]);
    expect(() => makeLesson({ form: 'basic', key: 'G', harp: 'C', level })).toThrow(
      expect.objectContaining({
        code: 'SOUNDING_IMPOSSIBLE',
        value: 'changes, chords, guide-tones, riff, turnaround, choruses',
        expected: 'goals for which there is something in 4/4 on a harp in C at this level',
      }),
    );
  });
});
