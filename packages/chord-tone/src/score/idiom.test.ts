import { makeChart, parseForm } from '@reedplate/form';
import { describe, expect, it } from 'vitest';
import { play } from './play.fixture.js';
import { scoreLine } from './score-line.js';

const chart = makeChart(parseForm('I7'), 'G');
const classes = (line: string) =>
  scoreLine(play(line), chart, { swing: 1 }).notes.map((note) => note.class);

describe('turns of the blues', () => {
  it.each([
    ['the fourth and the flat third', 'C5@0 Bb4@1 G4@2', ['idiom', 'idiom', 'root']],
    [
      'the flat fifth, the fourth and the flat third',
      'Db5@0 C5@1 Bb4@2 G4@3',
      ['idiom', 'idiom', 'idiom', 'root'],
    ],
    ['the flat third into the third', 'Bb4@0 B4@1', ['idiom', 'guide-tone']],
  ])('%s lead home', (_, line, expected) => {
    expect(classes(line)).toEqual(expected);
  });

  it('a sixth over the flat third is no turn', () => {
    expect(classes('E5@0 Bb4@1 G4@2')[0]).not.toBe('idiom');
  });

  it('a flat third that is struck again leads on as its repetition does', () => {
    expect(classes('Bb4@0/0.4 Bb4@0.5/0.4 G4@1')).toEqual(['idiom', 'idiom', 'root']);
  });

  it('a flat third that is struck again and leads nowhere is no turn', () => {
    expect(classes('Bb4@0/0.4 Bb4@0.5/0.4 F5@1').slice(0, 2)).not.toContain('idiom');
  });
});
