import { makeChart, parseForm } from '@reedplate/form';
import { makeLine } from '@reedplate/line';
import { describe, expect, it } from 'vitest';
import { BEAT } from './play.fixture.js';
import { scoreLine } from './score-line.js';

describe('notes at the beginning of a chart', () => {
  it('what lies before it, once latency is taken off, falls away', () => {
    const chart = makeChart(parseForm('I7 | IV7'), 'G');
    const at = (beat: number) => ({ start: beat * BEAT, duration: BEAT / 2, pitch: 67 });
    const { notes } = scoreLine(makeLine([0, 1, 8].map(at)), chart, { latency: BEAT });
    expect(notes.map(({ index, bar, beat }) => [index, bar, beat])).toEqual([
      [1, 1, 1],
      [2, 2, 4],
    ]);
  });
});
