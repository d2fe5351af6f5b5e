import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeMidi } from '@reedplate/interchange';
import { makeLine, transposeLine } from '@reedplate/line';
import { midi } from '@reedplate/pitch';
import { tuningChanges } from '@reedplate/study';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { runWords } from '../../shared/run-words.fixture.js';

const HERE = fileURLToPath(new URL('.', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'reedplate-design-'));

function fileOf(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const lineOf = (notes: string) =>
  makeLine(
    notes.split(' ').map((name, at) => ({ start: at * 480, duration: 480, pitch: midi(name) })),
  );

/** Two tunes in G, as second position has them on a C harp. */
const LINES = ['G5 F#5 E5 D5 E5 F#5 G5', 'D5 E5 F#5 G5 A5 G5 F#5 E5 D5 C5 B4 G4'].map(lineOf);
const asText = (key: string, up = 0) =>
  LINES.map((line) => `${JSON.stringify({ key, line: transposeLine(line, up) })}\n`).join('');
const TUNES = fileOf('tunes.ndjson', asText('G'));
const json = async (...words: readonly string[]) => JSON.parse((await runWords(words)).out);

describe('reedplate design', () => {
  test('adapt prints the best changes of one reed, and what each saves', async () => {
    const { code, out, err } = await runWords(['adapt', TUNES, '--level', 'overbends']);
    expect([code, err]).toEqual([0, '']);
    await expect(out).toMatchFileSnapshot(`${HERE}golden.txt`);
    expect(out).toMatch(/\n1 +5 draw up 1 +/u);
  });

  test('adapt --json prints what the library reports, as its published schema has it', async () => {
    const report = await json('adapt', TUNES, '--level', 'overbends', '--json');
    expect(report).toEqual(
      JSON.parse(JSON.stringify(tuningChanges(LINES, 'standard', { level: 'overbends' }))),
    );
    expect(report.changes).toHaveLength(80);
    const schema = JSON.parse(readFileSync(`${HERE}../../../schemas/adapt.json`, 'utf8'));
    const accepts = new Ajv({ strict: true, allowUnionTypes: true }).compile(schema);
    expect(accepts(report), JSON.stringify(accepts.errors)).toBe(true);
  });

  test('adapt --csv prints every change', async () => {
    const { out } = await runWords(['adapt', TUNES, '--reeds', '2', '--within', '1', '--csv']);
    const rows = out.trimEnd().split('\n');
    expect(rows[0]).toBe('rank,change,cost,effort,missing,saved');
    expect(rows).toHaveLength(1 + 40 + ((20 * 19) / 2) * 4);
  });

  test('adapt --position moves tunes of any key to where the harp plays them in that position', async () => {
    const words = ['--position', '2', '--level', 'overbends', '--json'];
    const inG = await json('adapt', TUNES, ...words);
    for (const [key, up] of [
      ['A', 2],
      ['F', -2],
      ['C', 5],
    ] as const) {
      const moved = fileOf(`in-${key}.ndjson`, asText(key, up));
      expect(await json('adapt', moved, ...words)).toEqual(inG);
    }
  });

  test('adapt reads ABC, takes a tuning and moves of the tunes', async () => {
    const abc = fileOf('book.abc', 'X:1\nL:1/4\nK:G\nGABc|d2e2|]\n');
    const words = ['adapt', abc, '--tuning', 'solo-ten', '--transpose=-12,0', '--json'];
    expect(await json(...words)).toMatchObject({ tuning: 'solo-ten', lines: 1 });
  });

  test.each([
    [['--reeds', '3'], /a number of reeds/u],
    [['--within', '0'], /semitones/u],
    [['--transpose', 'up'], /semitones/u],
    [['--missing', 'much'], /points/u],
    [['--missing', '0'], /points/u],
    [['--position', '13'], /position/u],
    [['--tuning', 'standrad'], /did you mean standard\?/u],
    [['--level', 'bend'], /did you mean bends\?/u],
    [['--count', '0'], /changes/u],
  ])('adapt refuses %j in one line and exits with 2', async (words, message) => {
    const { code, out, err } = await runWords(['adapt', TUNES, ...words]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(message);
    expect(err).toMatch(/^reedplate: [^\n]+\n$/u);
  });

  test('adapt names the line of a bad tune, and refuses files without a tune', async () => {
    const bad = fileOf('bad.ndjson', `${asText('G')}{"key":"G"}\n`);
    expect((await runWords(['adapt', bad])).err).toMatch(/line 3/u);
    const { code, err } = await runWords(['adapt', fileOf('none.ndjson', '\n')]);
    expect([code, err]).toEqual([2, expect.stringMatching(/none\.ndjson" holds nothing/u)]);
    expect((await runWords(['adapt', join(folder, 'nowhere')])).err).toMatch(/no such file/u);
    const broken = fileOf('broken.mid', 'MThd');
    expect((await runWords(['adapt', TUNES, broken])).err).toMatch(/broken\.mid/u);
  });

  test('adapt takes the key of a tune that says none, and saves nothing of what costs nothing', async () => {
    const note = { notes: [{ start: 0, duration: 480, pitch: 67 }] };
    const tune = fileOf('keyless.mid', '');
    writeFileSync(tune, writeMidi({ line: makeLine(note.notes) }));
    const { code, out } = await runWords(['adapt', tune, '--key', 'G', '--count', '1']);
    expect(code).toBe(0);
    expect(out).toMatch(/\n1 .* 0\.0 +0\.0 \(0 %\) +0\n/u);
  });
});
