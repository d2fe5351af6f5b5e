import { makeChart } from '@reedplate/form';
import { makePlayer } from '@reedplate/layout';
import { parseMetre } from '@reedplate/line';
import { describe, expect, it } from 'vitest';
import type { ExerciseKind } from './exercise-table.js';
import { EXERCISE_KINDS, type Exercise, makeExercise } from './make-exercise.js';

const chart = makeChart('basic', 'G');
function exercise(kind: ExerciseKind, on = chart, level: 'natural' | 'bends' = 'bends'): Exercise {
  const made = makeExercise(on, 'C', { kind, level });
  if (!made.playable) throw new Error(`no ${kind}`);
  return made;
}

describe('makeExercise', () => {
  it.each(EXERCISE_KINDS)('makeExercise gives %s a line, a goal and rests to breathe', (kind) => {
    const { line, goal, soundings, tab } = exercise(kind);
    expect(goal.length).toBeGreaterThan(30);
    expect(soundings.length).toBe(new Set(line.notes.map(({ start }) => start)).size);
    expect(tab).toContain('r');
    // No bar without a rest of half a beat.
    const { barTicks, beatTicks } = parseMetre(line.metre);
    const last = line.notes.at(-1);
    const bars = Math.ceil(((last?.start ?? 0) + (last?.duration ?? 0)) / barTicks);
    for (let bar = 0; bar < bars; bar += 1) {
      const inBar = line.notes.filter(({ start }) => Math.floor(start / barTicks) === bar);
      const times = new Map(inBar.map(({ start, duration }) => [start, duration]));
      const held = [...times.values()].reduce((sum, each) => sum + each, 0);
      expect(held, `bar ${bar + 1}`).toBeLessThanOrEqual(barTicks - beatTicks / 2);
    }
  });

  it('makeExercise plays roots, thirds and sevenths of each chord', () => {
    const classes = (kind: ExerciseKind) =>
      exercise(kind).line.notes.map(({ pitch }) => pitch % 12);
    expect(new Set(classes('roots-in-time'))).toEqual(new Set([7, 0, 2]));
    expect(classes('thirds').slice(0, 2)).toEqual([7, 11]);
    expect(classes('sevenths').slice(0, 2)).toEqual([7, 5]);
    expect(classes('arpeggios-up').slice(0, 4)).toEqual([7, 11, 2, 5]);
    expect(classes('arpeggios-down').slice(0, 4)).toEqual([5, 2, 11, 7]);
  });

  it('makeExercise strikes each chord in one grip of neighbouring holes, around 2 to 4', () => {
    const grips = new Set(
      exercise('chord-rhythm').soundings.map((each) =>
        each.map(({ breath, hole }) => `${breath} ${hole}`).join(', '),
      ),
    );
    expect([...grips]).toEqual(['draw 2, draw 3, draw 4', 'blow 2, blow 3, blow 4', 'draw 4']);
    const first = makeExercise(makeChart('basic', 'C'), 'C', { kind: 'chord-rhythm' });
    const holes = first.playable && first.soundings.map((each) => each.map(({ hole }) => hole));
    expect(holes ? holes[0] : null).toEqual([2, 3, 4]);
    // Over F the two that lie together.
    expect(holes ? holes[8] : null).toEqual([5, 6]);
  });

  it('makeExercise lets the seventh of a chord fall to the third of the next', () => {
    const made = makeExercise(makeChart('quick-change', 'G'), 'C', {
      kind: 'thirds-and-sevenths',
      level: 'overbends',
    });
    const pitches = made.playable ? made.line.notes.map(({ pitch }) => pitch) : [];
    // F falls to E, B flat rises to B: a semitone at both changes.
    expect([
      Math.abs((pitches[2] ?? 0) - (pitches[1] ?? 0)),
      Math.abs((pitches[4] ?? 0) - (pitches[3] ?? 0)),
    ]).toEqual([1, 1]);
    expect(pitches.map((pitch) => pitch % 12).slice(0, 4)).toEqual([11, 5, 4, 10]);
  });

  it('makeExercise bends no third or seventh that the harp has unbent nearby', () => {
    const { soundings } = exercise('thirds-and-sevenths');
    const tones = soundings
      .slice(6, 10)
      .map(([each]) => `${each?.breath} ${each?.hole} ${each?.depth}`);
    expect(tones).toEqual(['draw 3 0', 'draw 5 0', 'blow 5 0', 'draw 3 1']);
  });

  it('makeExercise plays minor thirds over minor chords', () => {
    const made = makeExercise(makeChart('minor', 'D'), 'C', { kind: 'thirds' });
    expect(made.playable && (made.line.notes[1]?.pitch ?? 0) % 12).toBe(5);
  });

  it('makeExercise drills each bend: approach, hold, release', () => {
    const { line, soundings, cautions } = exercise('bend-drill');
    const first = line.notes.slice(0, 3);
    expect(first.map(({ pitch }) => pitch)).toEqual([62, 61, 62]);
    expect(first[1]?.curve).toEqual([
      { at: 0, cents: 100 },
      { at: 480, cents: 0 },
    ]);
    expect(soundings.every(([sounding]) => (sounding?.hole ?? 9) <= 6)).toBe(true);
    expect(cautions.length).toBe(1);
    const level = makePlayer(['natural', { technique: 'bend', holes: [4], breath: 'draw' }]);
    const only = makeExercise(chart, 'C', { kind: 'bend-drill', level });
    expect(only.playable && only.line.notes.length).toBe(3);
  });

  it('makeExercise warns of dizziness where breath is drilled, and there alone', () => {
    const { cautions } = exercise('breath-balance');
    expect(cautions).toEqual([expect.stringMatching(/stop.*dizzy.*ask a doctor/iu)]);
    expect(exercise('thirds').cautions).toEqual([]);
  });

  it('makeExercise refuses what is no exercise, and a drill of bends without a bend', () => {
    expect(() => makeExercise(chart, 'C', { kind: 'roofs' as 'thirds' })).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
    );
    expect(() => makeExercise(chart, 'C', { kind: 'bend-drill', level: 'natural' })).toThrow(
      expect.objectContaining({ code: 'SOUNDING_IMPOSSIBLE' }),
    );
  });
});
