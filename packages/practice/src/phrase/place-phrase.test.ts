import { makeChart, parseForm } from '@reedplate/form';
import { describe, expect, it } from 'vitest';
import { parsePhrase } from './parse-phrase.js';
import { placePhrase } from './place-phrase.js';
import type { PlacedPhrase } from './placed-phrase.js';

const chart = makeChart('quick-change', 'G');
const placed = (...given: Parameters<typeof placePhrase>): PlacedPhrase => {
  const answer = placePhrase(...given);
  if (!answer.playable) throw new Error(`not placed: ${answer.without.join(' ')}`);
  return answer;
};

describe('placePhrase', () => {
  it('placePhrase puts a phrase at its bar, in the time of the chart', () => {
    const { line, tab, bar } = placed('falling-triad', { chart, bar: 3, harp: 'C' });
    expect(bar).toBe(3);
    expect(line.notes[0]).toMatchObject({ start: 2 * 3840 + 1920, duration: 480, pitch: 74 });
    expect(tab).toBe('r:2 -4:1/2 -3:1/2 -2');
  });

  it('placePhrase keeps the tempo of the chart', () => {
    const slow = makeChart('basic', 'G', { tempo: 60 });
    expect(placed('stair', { chart: slow, harp: 'C' }).line.tempo).toBe(60);
  });

  it('placePhrase moves a riff with the chord', () => {
    const stair = (bar: number) =>
      placed('stair', { chart: makeChart('basic', 'G'), bar, harp: 'C' });
    expect(stair(1).line.notes.map(({ pitch }) => pitch % 12)).toEqual([7, 11, 2, 4, 2]);
    expect(stair(5).line.notes.map(({ pitch }) => pitch % 12)).toEqual([0, 4, 7, 9, 7]);
    expect(stair(5).otherHarmony).toEqual([{ bar: 5, madeFor: 'G7', found: 'C7' }]);
  });

  it('placePhrase plays the third that the chord has', () => {
    const minor = makeChart('minor', 'G');
    const { changes, line } = placed('stair', { chart: minor, harp: 'C' });
    expect(line.notes[1]?.pitch).toBe(70);
    expect(changes[0]).toMatchObject({ note: 1, degree: '3', why: 'another-tone' });
  });

  it('placePhrase gives the nearest chord tone where the level lacks a note, and says so', () => {
    // Flat third, third, root: at the natural level 3 draw bent is not to be had.
    const { changes, line } = placed('third-from-below', { chart, harp: 'C', level: 'natural' });
    expect(line.notes.map(({ start }) => start)).toEqual([1920, 2400, 2880]);
    expect(changes).toEqual([
      { note: 0, degree: 'b3', wanted: 70, played: 71, why: 'not-at-level' },
    ]);
  });

  it('placePhrase keeps of a chord what lies on one breath', () => {
    const chord = parsePhrase('(-2-3-4):4');
    const { changes, soundings } = placed(chord, { chart: makeChart('basic', 'E'), harp: 'C' });
    expect(soundings[0]?.length).toBeGreaterThan(0);
    expect(changes.some(({ why }) => why === 'no-grip' || why === 'not-at-level')).toBe(true);
  });

  it('placePhrase lets a pickup begin before bar 1', () => {
    const phrase = parsePhrase('-2:1/2 -3:1/2 | -4:4', { pickup: 960 });
    const { line } = placed(phrase, { chart, harp: 'C' });
    expect([line.pickup, line.notes[0]?.start, line.notes[2]?.start]).toEqual([960, 0, 960]);
    const later = placed(phrase, { chart, harp: 'C', bar: 2 });
    expect([later.line.pickup, later.line.notes[2]?.start]).toEqual([0, 3840]);
  });

  it('placePhrase writes swung eighths as long and short in 12/8', () => {
    const slow = makeChart('basic', 'G', { metre: '12/8', feel: 'slow' });
    const { line } = placed('falling-triad', { chart: slow, harp: 'C' });
    expect(line.notes.map(({ start, duration }) => [start, duration])).toEqual([
      [2880, 960],
      [3840, 480],
      [4320, 1440],
    ]);
  });

  it('placePhrase says which chord has no tone on the harp', () => {
    const alien = makeChart(parseForm('| Idim |'), 'Eb');
    const answer = placePhrase('falling-triad', { chart: alien, harp: 'C', level: 'natural' });
    expect(answer).toMatchObject({ playable: true });
    const none = makeChart(parseForm('| im |'), 'Eb');
    expect(
      placePhrase(parsePhrase('-2 -3 -4'), { chart: none, harp: 'C', level: 'natural' }),
    ).toMatchObject({
      playable: false,
      without: ['Ebm'],
    });
  });

  it.each([
    [
      'a phrase there is not',
      () => placePhrase('low-seet', { chart, harp: 'C' }),
      'PHRASE_UNKNOWN',
    ],
    [
      'a bar without room',
      () => placePhrase('low-seat', { chart, bar: 13, harp: 'C' }),
      'NUMBER_RANGE',
    ],
    [
      'another number of beats',
      () =>
        placePhrase('low-seat', { chart: makeChart('basic', 'G', { metre: '3/4' }), harp: 'C' }),
      'PHRASE_INVALID',
    ],
    ['a harp that is none', () => placePhrase('low-seat', { chart, harp: 'H' }), 'KEY_UNKNOWN'],
    [
      'an option there is not',
      () => placePhrase('low-seat', { chart, harp: 'C', beat: 1 } as never),
      'OPTION_UNKNOWN',
    ],
  ])('placePhrase refuses %s', (_, run, code) => {
    expect(run).toThrow(expect.objectContaining({ code }));
  });
});
