import { makeChart, parseForm } from '@reedplate/form';
import { describe, expect, it } from 'vitest';
import { passagesByBeat, passagesBySpan } from './passage.js';

const chart = makeChart(parseForm('| I7 | I7 | IV7 V7 | N.C. | V7 |'), 'G');

describe('passagesBySpan', () => {
  it('passagesBySpan makes one place of each chord written, rests left out', () => {
    const passages = passagesBySpan(chart);
    expect(passages.map(({ length }) => length)).toEqual([1, 1, 1, 1, 1]);
    expect(passages.map(([{ start, end }]) => (end - start) / 960)).toEqual([4, 4, 2, 2, 4]);
  });
});

describe('passagesByBeat', () => {
  it('passagesByBeat joins neighbouring bars of a chord and divides them into beats', () => {
    const passages = passagesByBeat(chart);
    expect(passages.map(([{ span }]) => span.chord.symbol)).toEqual(['G7', 'C7', 'D7', 'D7']);
    expect(passages.map(({ length }) => length)).toEqual([8, 2, 2, 4]);
    expect(passages[0]?.map(({ span, beat }) => `${span.bar}.${beat}`)).toEqual([
      '1.1',
      '1.2',
      '1.3',
      '1.4',
      '2.1',
      '2.2',
      '2.3',
      '2.4',
    ]);
  });

  it('passagesByBeat counts felt beats', () => {
    const slow = makeChart('basic', 'G', { metre: '12/8' });
    const [first] = passagesByBeat(slow);
    expect(first?.length).toBe(16);
    expect(first?.[1]).toMatchObject({ beat: 2, start: 1440, end: 2880 });
  });
});
