import { makeChart, parseForm } from '@reedplate/form';
import { describe, expect, it } from 'vitest';
import { play } from './play.fixture.js';
import { scoreLine } from './score-line.js';

const chart = makeChart(parseForm('I7'), 'G');
const classes = (line: string) =>
  scoreLine(play(line), chart, { swing: 1 }).notes.map((note) => note.class);

describe('turns of the blues', () => {
  it('a flat third that is struck again leads on as its repetition does', () => {
    expect(classes('Bb4@0/0.4 Bb4@0.5/0.4 G4@1')).toEqual(['idiom', 'idiom', 'root']);
  });

  it('a flat third that is struck again and leads nowhere is no turn', () => {
    expect(classes('Bb4@0/0.4 Bb4@0.5/0.4 F5@1').slice(0, 2)).not.toContain('idiom');
  });
});
