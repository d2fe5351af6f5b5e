import { readFileSync } from 'node:fs';
import { makeBacking } from '@reedplate/backing';
import { makeChart } from '@reedplate/form';
import { readMidi, writeMidi } from '@reedplate/interchange';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { RECORDING } from '../../shared/recording.fixture.js';
import { runWords } from '../../shared/run-words.fixture.js';

const { chart: _, ...band } = makeBacking(
  makeChart('quick-change', 'G', { choruses: 2, tempo: 100 }),
);
const MIDI = writeMidi(band);

const run = (...words: readonly string[]) =>
  runWords(words, { readBytes: (path) => (path.endsWith('.wav') ? RECORDING : MIDI) });

async function written(file: string): Promise<Uint8Array> {
  let bytes = new Uint8Array();
  const { code } = await runWords(['listen', 'band.mid', '--band', '-o', file], {
    readBytes: () => MIDI,
    writeBytes: (_path, given) => {
      bytes = new Uint8Array(given);
    },
  });
  expect(code).toBe(0);
  return bytes;
}

describe('reedplate listen --band', () => {
  test('reedplate listen --band prints the form, the chords bar by bar and the harps', async () => {
    const { code, out, err } = await run('listen', 'band.mid', '--band');
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^Quick-change twelve-bar in G, 4\/4/u);
    expect(out).toContain('| G7 | C7 | G7 | G7 |');
    expect(out).toMatch(/sure by: form \d+ %, key \d+ %/u);
    expect(out).toMatch(/C harp\s+2 \(cross harp\)/u);
  });

  test('reedplate listen --band --json prints what its schema accepts', async () => {
    const schema = readFileSync(new URL('../../../schemas/listen.json', import.meta.url), 'utf8');
    const accepts = new Ajv({ strict: true, allowUnionTypes: true }).compile(JSON.parse(schema));
    for (const file of ['band.mid', 'take.wav']) {
      const answer = JSON.parse((await run('listen', file, '--band', '--json')).out);
      expect(accepts(answer), JSON.stringify(accepts.errors)).toBe(true);
      expect(answer.harps.length).toBe(3);
    }
  });

  test('reedplate listen --band hears a recording, and says when its bars begin', async () => {
    const { code, out } = await run('listen', 'take.wav', '--band');
    expect(code).toBe(0);
    expect(out).toMatch(/from second \d+\.\d\d, \d+\.\d beats a minute, A4 at \d+\.\d Hz/u);
    expect(out).toMatch(/listen for yourself/u);
  });

  test('reedplate listen --band -o writes JSON, text, and MIDI whose markers are the chords', async () => {
    const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
    expect(JSON.parse(text(await written('band.json'))).form.form).toBe('quick-change');
    expect(text(await written('band.txt'))).toMatch(/^Quick-change twelve-bar in G/u);
    const { chart } = readMidi(await written('chords.mid'));
    expect(chart?.spans.slice(0, 2).map(({ chord }) => chord?.symbol)).toEqual(['G7', 'C7']);
  });

  test.each([
    [['--tempo', '96'], /"--tempo 96".*without --band/u],
    [['--harp', 'C'], /"--harp C".*without --band/u],
    [['--key', 'H'], /"H"/u],
    [['-o', 'band.xyz'], /band\.xyz/u],
  ])('reedplate listen --band %j says in one line what is wrong', async (words, message) => {
    const { code, err } = await run('listen', 'band.mid', '--band', ...words);
    expect(code).toBe(2);
    expect(err).toMatch(message);
    expect(err).toMatch(/^reedplate: [^\n]+\n$/u);
  });
});
