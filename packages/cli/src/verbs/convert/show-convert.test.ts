import { makeBacking } from '@reedplate/backing';
import { makeChart } from '@reedplate/form';
import { readMusicXml, writeMidi } from '@reedplate/interchange';
import { describe, expect, test } from 'vitest';
import { runWords } from '../../shared/run-words.fixture.js';

const BAND = writeMidi(makeBacking(makeChart('basic', 'G', { tempo: 96 })));
const TUNE = 'X:1\nT:Two\nM:4/4\nL:1/4\nK:G\n!wiggle!G B d e|!wiggle!d B G2|]\n';

async function convert(input: string | Uint8Array, ...words: readonly string[]) {
  const written = new Map<string, Uint8Array>();
  const outcome = await runWords(['convert', ...words], {
    readBytes: () => (typeof input === 'string' ? new TextEncoder().encode(input) : input),
    writeBytes: (path, bytes) => void written.set(path, bytes),
  });
  return { ...outcome, written };
}

describe('reedplate convert', () => {
  test('reedplate convert lists the parts of a band, drums by what they are', async () => {
    const { out } = await convert(BAND, 'band.mid', 'bass.abc', '--part', '1');
    expect(out).toMatch(/^1 +Bass +program \d+ +\d+ notes$/mu);
    expect(out).toMatch(/^3 +Drums +percussion +\d+ notes$/mu);
  });

  test('reedplate convert gives the title and the key that it is told', async () => {
    const words = ['two.abc', 'two.musicxml', '--title', 'Mine', '--key', 'D'];
    const { out, written } = await convert(TUNE, ...words);
    expect(out).toBe('Two: 7 notes in 2 bars of 4/4, in D, as musicxml\n');
    const { line, key } = readMusicXml(written.get('two.musicxml') ?? new Uint8Array());
    expect([line.title, key]).toEqual(['Mine', 'D']);
  });

  test('reedplate convert says once what was left out several times', async () => {
    const { err } = await convert(TUNE, 'two.abc', 'two.mid');
    expect(err).toMatch(/^reedplate: two\.abc: .*"!wiggle!" \(2 times\), line 6, column \d+\n$/u);
  });

  test('reedplate convert writes to standard output in the format that --to says', async () => {
    const { code, out, written } = await convert(
      TUNE,
      'two.abc',
      '-',
      '--to',
      'tab',
      '--harp',
      'C',
    );
    expect([code, out]).toEqual([0, '']);
    expect(new TextDecoder().decode(written.get('-'))).toContain('\n+3 -3 -4 +5 | -4 -3 +3:2 |\n');
    expect((await convert(TUNE, 'two.abc', '-')).err).toBe(
      'reedplate: "-" is not understood by the command: expected --to with it, the format to write\n',
    );
  });
});
