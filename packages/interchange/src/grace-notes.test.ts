import { makeLine, type TimedNote } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { graceTargets } from './grace-notes.js';

const note = (start: number, pitch = 60): TimedNote => ({ start, duration: 100, pitch });
const grace = (start: number, pitch = 60): TimedNote => ({ ...note(start, pitch), grace: true });
const targets = (...notes: readonly TimedNote[]) => graceTargets(makeLine(notes).notes);

describe('graceTargets', () => {
  test('leads each grace note to the next note that is none', () => {
    expect(targets(grace(10), grace(20), note(30), note(50), grace(60), note(90))).toEqual([
      ...[30, 30, undefined, undefined, 90, undefined],
    ]);
  });

  test('leads a grace note that begins with other notes to those', () => {
    expect(targets(grace(0, 72), note(0, 60), note(0, 64), note(90))).toEqual([
      ...[undefined, undefined, 0, undefined],
    ]);
  });

  test('leads nowhere at the end, and without grace notes', () => {
    expect(targets(note(0), grace(50))).toEqual([undefined, undefined]);
    expect(targets(note(0), note(50))).toEqual([undefined, undefined]);
    expect(targets()).toEqual([]);
  });
});
