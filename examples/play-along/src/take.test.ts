import { scoreLine } from '@reedplate/chord-tone';
import { notesInSeconds } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { makeSession } from './session.js';
import { FIRST_SET_UP } from './set-up.js';
import { judgeTake, LEAD, latencyOf, lineOfPass, onsetsIn } from './take.js';

const session = makeSession({ ...FIRST_SET_UP, tempo: 120, line: 'arpeggios' });
const practised = session.shown?.line;
const played = (by: number) =>
  practised === undefined
    ? []
    : notesInSeconds(practised).map((note) => ({ ...note, start: note.start + LEAD + by }));

describe('judgeTake', () => {
  test('judgeTake judges what was played as the library judges the line itself', () => {
    const { score, verdict, next } = judgeTake(lineOfPass(played(0), session), session, true);
    const own = practised && scoreLine(practised, session.song, { harp: session.harp });
    expect(Math.abs(score.total - (own?.total ?? 0))).toBeLessThan(1);
    expect(verdict).not.toBe('');
    expect(next.length).toBeGreaterThan(0);
  });

  test('judgeTake takes off lateness that it estimates', () => {
    const late = judgeTake(lineOfPass(played(0.09), session), session, false);
    const exact = judgeTake(lineOfPass(played(0), session), session, true);
    expect(Math.abs(late.score.total - exact.score.total)).toBeLessThan(5);
  });

  test('judgeTake judges the bars of a loop alone', () => {
    const loop = makeSession({ ...FIRST_SET_UP, tempo: 120, loopFrom: 5, loopTo: 6 });
    const notes = [{ start: LEAD, duration: 4, pitch: 72 }];
    const { score } = judgeTake(lineOfPass(notes, loop), loop, true);
    expect(score.notes.map(({ bar, class: kind }) => [bar, kind])).toEqual([[5, 'root']]);
  });

  test('lineOfPass leaves out what lies before and after, and keeps who comes early on the one', () => {
    const notes = [
      { start: 0.05, duration: 0.1, pitch: 60 },
      { start: LEAD - 0.05, duration: 0.55, pitch: 67 },
      { start: LEAD + 24.05, duration: 0.2, pitch: 62 },
    ];
    expect(lineOfPass(notes, session).notes).toEqual([{ start: 0, duration: 960, pitch: 67 }]);
  });
});

describe('latencyOf', () => {
  const clicks = [0.5, 1.1, 1.7, 2.3];
  test('latencyOf is the middle of how late the clicks are heard', () => {
    expect(latencyOf([0.58, 1.18, 1.77, 2.39], clicks)).toBe(80);
    expect(latencyOf([0.58, 1.18, 2.6], clicks)).toBe(80);
  });

  test('latencyOf gives nothing where most clicks are not heard', () => {
    expect(latencyOf([0.58], clicks)).toBeUndefined();
    expect(latencyOf([], clicks)).toBeUndefined();
  });
});

test('onsetsIn finds where clicks begin, and nothing in silence', () => {
  const samples = new Float32Array(16_000);
  for (const second of [0.2, 0.8]) samples.fill(0.5, second * 8000, second * 8000 + 200);
  expect(onsetsIn(samples, 8000).map((second) => second.toFixed(2))).toEqual(['0.20', '0.80']);
  expect(onsetsIn(new Float32Array(8000), 8000)).toEqual([]);
});
