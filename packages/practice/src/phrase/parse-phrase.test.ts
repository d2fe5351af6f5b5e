import { makeHarp } from '@reedplate/layout';
import { TAB_DIALECT_IDS } from '@reedplate/tab';
import { describe, expect, it } from 'vitest';
import { formatPhrase } from './format-phrase.js';
import { parsePhrase } from './parse-phrase.js';

const degreesOf = (text: string, position: 1 | 2 | 3 | 12) =>
  parsePhrase(text, { position }).notes.map(({ degree, octave }) => `${degree}${octave}`);

describe('parsePhrase', () => {
  it('parsePhrase turns marks into degrees of the position', () => {
    expect(degreesOf("-1:1/2 -2:1/2 -3' -3 -4", 2)).toEqual(['5-1', '10', 'b30', '30', '50']);
    expect(degreesOf('+4 +5 +6', 1)).toEqual(['11', '31', '51']);
    expect(degreesOf("-4 -5 -6 -6'", 3)).toEqual(['11', 'b31', '51', 'b51']);
    expect(degreesOf('-5 -6 +7', 12)).toEqual(['11', '31', '51']);
  });

  it('parsePhrase gives the same degrees for the same tab on any key of harp', () => {
    const text = "-2 -3:1/2 -4':1/2;scoop +4 (-1-2-3)";
    const { notes } = parsePhrase(text);
    for (const harp of ['A', 'F#', 'low F', 'Bb']) {
      expect(parsePhrase(text, { harp }).notes).toEqual(notes);
    }
    expect(parsePhrase(text, { harp: makeHarp('D') }).notes).toEqual(notes);
  });

  it('parsePhrase counts from the root of the chord where asked', () => {
    const riff = { from: 'chord', harmony: 'I7 | IV7' } as const;
    const { notes } = parsePhrase('-2 -3 -4 r | +4 +5 +6 r', riff);
    expect(notes.map(({ degree }) => degree)).toEqual(['1', '3', '5', '1', '3', '5']);
  });

  it('parsePhrase reads times, rests and how a note is played', () => {
    const { notes } = parsePhrase('r:1/2 -4:1/3;accent -4:1/6;grace -3;fall100+accent');
    expect(notes).toEqual([
      { at: 480, length: 320, degree: '5', octave: 0, accent: true },
      { at: 800, length: 160, degree: '5', octave: 0, grace: true },
      {
        at: 960,
        length: 960,
        degree: '3',
        octave: 0,
        accent: true,
        bend: { shape: 'fall', cents: 100 },
      },
    ]);
  });

  it.each([
    ['a mark that is none', '-2 -x', 'TAB_SYNTAX'],
    ['a manner that is none', '-2;loud', 'PHRASE_INVALID'],
    ['more than its chords hold', '-2:4 -2', 'PHRASE_INVALID'],
    ['a hole that no harp of ten has', '-11', 'TAB_SYNTAX'],
    ['a bend that the reeds do not give', "-5'", 'SOUNDING_IMPOSSIBLE'],
    ['nothing', '', 'TAB_SYNTAX'],
    ['what is no text', 7 as unknown as string, 'PHRASE_INVALID'],
    ['more than 20,000 characters', '-2 '.repeat(6667), 'PHRASE_INVALID'],
    ['rests alone', 'r r', 'PHRASE_INVALID'],
  ])('parsePhrase refuses %s', (_, text, code) => {
    expect(() => parsePhrase(text)).toThrow(expect.objectContaining({ code }));
  });
});

describe('formatPhrase', () => {
  it('formatPhrase writes bar lines and manners, and the rest before the first note', () => {
    const text = 'r:1/2 -4:1/2;accent -3:3;scoop | -4:2;fall100+accent'.replace(
      'fall100+accent',
      'accent+fall100',
    );
    expect(formatPhrase(parsePhrase(text, { harmony: 'I7 | I7' }))).toBe(text);
  });

  it('formatPhrase puts a bar line behind a pickup', () => {
    const text = '-3:1/2 -3:1/2 | -4:4';
    expect(formatPhrase(parsePhrase(text, { pickup: 960 }))).toBe(text);
  });

  it.each(TAB_DIALECT_IDS)('formatPhrase writes %s, which parsePhrase reads back', (dialect) => {
    const phrase = parsePhrase("-3':1/2;scoop -4:3/2 (+4+5):2", { harmony: 'I7' });
    const text = formatPhrase(phrase, { dialect });
    expect(parsePhrase(text, { dialect, harmony: 'I7' })).toEqual(phrase);
  });

  it('formatPhrase says which bar holds what the harp lacks', () => {
    const high = parsePhrase("+10''", { position: 1 });
    expect(() => formatPhrase(high, { harp: 'C', position: 9 })).toThrow(
      expect.objectContaining({ code: 'SOUNDING_IMPOSSIBLE' }),
    );
  });
});
