import { makeChart, parseForm } from '@reedplate/form';
import { describe, expect, it } from 'vitest';
import { play } from './play.fixture.js';
import { scoreLine } from './score-line.js';

const chart = makeChart(parseForm('Imaj7'), 'C');
const classes = (line: string) =>
  scoreLine(play(line), chart, { swing: 1 }).notes.map((note) => note.class);

describe('a note that leans', () => {
  it('is longer than what it resolves to, and on a stronger place', () => {
    expect(classes('F4@0 E4@1/0.5')[0]).toBe('leaning');
  });

  it.each([
    ['as long as what it resolves to', 'F4@0 E4@1'],
    ['on a place as strong', 'F4@0.5/1 E4@1.5/0.5'],
    ['on a weaker place', 'F4@0.5/0.5 E4@1/0.4'],
  ])('is none that is %s', (_, line) => {
    expect(classes(line)[0]).not.toBe('leaning');
  });
});
