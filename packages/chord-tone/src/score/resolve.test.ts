import { makeChart, parseForm } from '@reedplate/form';
import { makeLine } from '@reedplate/line';
import { describe, expect, it } from 'vitest';
import { BEAT } from './play.fixture.js';
import { scoreLine } from './score-line.js';

// One bar of C7: F and E, the fourth and the third.
const chart = makeChart(parseForm('I7'), 'C');

/** The index that each note resolves to, the notes so many beats apart, each let go before the next. */
function resolutions(pitches: readonly number[], beats: number): readonly (number | null)[] {
  const length = beats * BEAT;
  const notes = pitches.map((pitch, at) => ({ start: at * length, duration: length - 60, pitch }));
  return scoreLine(makeLine(notes), chart).notes.map(({ resolvesTo }) => resolvesTo);
}

describe('resolution of an enclosure', () => {
  it('the note above and the note below both resolve to the one between', () => {
    expect(resolutions([65, 63, 64], 1 / 2)).toEqual([2, 2, null]);
  });

  it('two notes on one side that do not run on enclose nothing', () => {
    expect(resolutions([65, 66, 64], 1 / 2)[0]).toBeNull();
  });
});

describe('resolution through a repetition', () => {
  it('a note that is struck again resolves where its repetition does', () => {
    expect(resolutions([65, 65, 64], 1 / 2)).toEqual([2, 2, null]);
  });

  it('what resolves later than twice the time of one step does not', () => {
    expect(resolutions([65, 65, 65, 65, 65, 64], 1 / 2).slice(3)).toEqual([5, 5, null]);
    expect(resolutions([65, 65, 65, 65, 65, 65, 65, 64], 1 / 2)[0]).toBeNull();
  });
});
