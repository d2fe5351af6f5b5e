import { describe, expect, test } from 'vitest';
import { readMusicXml } from './read-musicxml.js';

const note = (staff: number): string =>
  `<note><pitch><step>C</step><octave>4</octave></pitch><duration>1</duration><staff>${staff}</staff></note>`;
const times = (count: number, make: (at: number) => string): string =>
  Array.from({ length: count }, (_, at) => make(at + 1)).join('');
const score = (parts: string): string => `<score-partwise><part-list/>${parts}</score-partwise>`;
const part = (inside: string): string => `<part><measure>${inside}</measure></part>`;

describe('readMusicXml', () => {
  test('readMusicXml reads sixteen staves, and refuses one for each bar of a long piece', () => {
    expect(readMusicXml(score(part(times(16, note)))).parts.length).toBe(16);
    expect(() => readMusicXml(score(part(times(17, note))))).toThrowError(
      expect.objectContaining({ code: 'MUSICXML_MALFORMED', value: 17 }),
    );
  });

  test('readMusicXml reads 256 parts and no more', () => {
    expect(readMusicXml(score(times(256, () => part(note(1))))).parts.length).toBe(256);
    expect(() => readMusicXml(score(times(257, () => part(note(1)))))).toThrowError(
      expect.objectContaining({ code: 'MUSICXML_MALFORMED', value: 257 }),
    );
  });
});
