import { makeChart, parseForm } from '@reedplate/form';
import { describe, expect, it } from 'vitest';
import { layPhrase } from './lay-phrase.js';
import { makePhrase } from './make-phrase.js';
import { parsePhrase } from './parse-phrase.js';
import type { PhraseNote } from './phrase.js';

const STRAIGHT = makeChart(parseForm('I7 | IV7'), 'G');
const SLOW = makeChart(parseForm('I7 | IV7'), 'G', { metre: '12/8' });
const starts = (...given: Parameters<typeof layPhrase>) =>
  layPhrase(...given).notes.map(({ start, duration }) => [start, duration]);

describe('layPhrase', () => {
  it('layPhrase lays even eighths of a shuffle long and short in 12/8', () => {
    expect(starts(parsePhrase('-2:1/2 -3:1/2 -4:1 -3:3/4 -2:1/4'), SLOW, 1)).toEqual([
      [0, 960],
      [960, 480],
      [1440, 1440],
      [2880, 1200],
      [4080, 240],
    ]);
  });

  it('layPhrase lays them in the middle of the beat where they are straight', () => {
    expect(starts(parsePhrase('-2:1/2 -3:1/2', { feel: 'straight' }), SLOW, 1)).toEqual([
      [0, 720],
      [720, 720],
    ]);
  });

  it('layPhrase writes long and short of 12/8 as even eighths of 4/4, and the last triplet late', () => {
    const thirds = [
      [0, 480],
      [480, 480],
      [960, 240],
      [1200, 240],
    ].map(([at = 0, length = 0]): PhraseNote => ({ at, length, degree: '1', octave: 0 }));
    const slow = makePhrase(thirds, { metre: '12/8', feel: 'slow-12/8' });
    expect(starts(slow, STRAIGHT, 1)).toEqual([
      [0, 240],
      [240, 240],
      [480, 240],
      [720, 240],
    ]);
  });

  it('layPhrase moves a third to the third of the chord, and leaves it where the chord has none', () => {
    const third = parsePhrase('-3', { from: 'chord' });
    const over = (bars: string) =>
      layPhrase(third, makeChart(parseForm(bars), 'G'), 1).notes.map(({ above, isChordTone }) => [
        above,
        isChordTone,
      ]);
    expect(over('I7')).toEqual([[4, true]]);
    expect(over('Im7')).toEqual([[3, true]]);
    expect(over('I5')).toEqual([[4, false]]);
  });

  it('layPhrase counts from the tonic where no chord sounds, and says what the chart lacks', () => {
    const third = parsePhrase('-3', { from: 'chord' });
    const { notes, otherHarmony } = layPhrase(third, makeChart(parseForm('N.C.'), 'G'), 1);
    expect(notes).toEqual([
      {
        note: 0,
        start: 0,
        duration: 960,
        wanted: 4,
        above: 4,
        chord: null,
        isChordTone: false,
      },
    ]);
    expect(otherHarmony).toEqual([{ bar: 1, madeFor: 'G7', found: null }]);
  });
});
