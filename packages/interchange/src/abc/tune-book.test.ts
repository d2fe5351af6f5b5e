import { describe, expect, test } from 'vitest';
import { splitTuneBook } from './tune-book.js';

const texts = (text: string): readonly string[] =>
  splitTuneBook(text).tunes.map((lines) => lines.map((line) => line.text).join('|'));

describe('splitTuneBook', () => {
  test('splitTuneBook begins a tune at X: and ends it before a blank line', () => {
    expect(texts('X:1\nK:C\nA\n\nX:2\nK:D\nB\nX:3\nK:G\nC')).toEqual([
      'X:1|K:C|A',
      'X:2|K:D|B',
      'X:3|K:G|C',
    ]);
  });

  test('splitTuneBook takes text between tunes for people, and fields before the first for all', () => {
    const book = splitTuneBook('M:3/4\nR:waltz\n\nDear reader\n\nX:1\nK:C\nA');
    expect(book.header.map(({ text }) => text)).toEqual(['M:3/4', 'R:waltz']);
    expect(book.tunes.length).toBe(1);
    expect(splitTuneBook('A letter\nM:3/4\n\nX:1\nK:C').header).toEqual([]);
    expect(splitTuneBook('X:1\nK:C').header).toEqual([]);
  });

  test.each(['\n', '\r\n', '\r'])('splitTuneBook counts lines from 1, ended by %j', (end) => {
    const [lines] = splitTuneBook(['% a book', 'X:1', '', 'X:2', 'K:C'].join(end)).tunes.slice(-1);
    expect(lines?.map(({ line }) => line)).toEqual([4, 5]);
  });

  test('splitTuneBook takes out comments, but for those that are escaped', () => {
    expect(texts('X:1 % one\n%%scale 1\nT:50\\% more\nK:C\n% alone\nA % end')).toEqual([
      'X:1|T:50\\% more|K:C|A',
    ]);
  });

  test('splitTuneBook keeps the directive that changes what sounds', () => {
    expect(texts('X:1\n%%propagate-accidentals octave\nK:C')).toEqual([
      'X:1|I:propagate-accidentals octave|K:C',
    ]);
  });

  test('splitTuneBook of no tune has none', () => {
    expect(splitTuneBook('Only words\n\nand more').tunes).toEqual([]);
    expect(splitTuneBook('')).toEqual({ header: [], tunes: [] });
  });
});
