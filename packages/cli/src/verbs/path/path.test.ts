import { makeHarp } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { explainPath } from '@reedplate/playability';
import { describe, expect, test } from 'vitest';
import { runWords } from '../../shared/run-words.fixture.js';

const TAKE = makeLine(
  [67, 70, 72, 73].map((pitch, at) => ({ start: at * 960, duration: 960, pitch })),
  { tempo: 96 },
);
const read = (words: readonly string[], line: unknown = TAKE) =>
  runWords(words, { readBytes: () => new TextEncoder().encode(JSON.stringify(line)) });

describe('reedplate path', () => {
  test('path prints a move a line: tab, notes, effort, what it is made of, air and why', async () => {
    const { out, code } = await read(['path', 'take.json', '--harp', 'C']);
    expect(code).toBe(0);
    const lines = out.split('\n');
    expect(lines[0]).toMatch(/^on (?:a|the) C harp \(intermediate, bends\)$/u);
    expect(lines[2]).toMatch(/^bar +tab +notes +effort +made of +air +why$/u);
    expect(lines[3]).toMatch(/^1 +\+3 +G4 +0 .* -2 would cost \d/u);
    expect(lines[4]).toMatch(/^1:2 +-3' +Bb4 .*bending 6, holding .*the only way$/u);
    expect(out).toMatch(/\neffort [\d.]+ points, worst [\d.]+: /u);
  });

  test('path --json prints what the library gives', async () => {
    const words = ['path', 'take.json', '--harp', 'C', '--all-reeds', '--json'];
    expect(JSON.parse((await read(words)).out)).toEqual(
      JSON.parse(JSON.stringify(explainPath(TAKE, makeHarp('C')))),
    );
  });

  test('path --count gives so many of the best ways', async () => {
    const words = ['path', 'take.json', '--harp', 'C', '--count', '2'];
    expect((await read(words)).out).toMatch(/\n1 .* \+3 -3' \+4 -4'\n2 .* -2 -3' \+4 -4'\n$/u);
    const { paths } = JSON.parse((await read([...words, '--json'])).out);
    expect(paths).toMatchObject([
      { harp: 'C', model: 'intermediate' },
      { harp: 'C', model: 'intermediate' },
    ]);
  });

  test('path spells notes by --key, else by the key of the line, else by that of the harp', async () => {
    const notes = async (...more: string[]) =>
      (await read(['path', 'take.json', '--harp', 'C', ...more])).out
        .split('\n')
        .slice(3, 7)
        .map((line) => line.split(/ +/u)[2]);
    expect(await notes()).toEqual(['G4', 'Bb4', 'C5', 'Db5']);
    expect(await notes('--key', 'F')).toEqual(['G4', 'Bb4', 'C5', 'Db5']);
    expect(await notes('--key', 'B')).toEqual(['G4', 'A#4', 'C5', 'C#5']);
    const abc = new TextEncoder().encode('X:1\nL:1/4\nK:B\nA|]\n');
    const inB = await runWords(['path', 'x.abc', '--harp', 'C'], { readBytes: () => abc });
    expect(inB.out).toContain('A#4');
    const refused = await read([
      'path',
      'take.json',
      '--harp',
      'C',
      '--level',
      'natural',
      '--key',
      'B',
    ]);
    expect(refused.out).toContain('A#4 needs a technique beyond the level');
    expect((await read(['path', 'x', '--harp', 'C', '--key', 'H'])).err).toMatch(
      /did you mean B\?/u,
    );
  });

  test('path says what cannot be sounded, where, and what could be played instead', async () => {
    const { out, code } = await read(['path', 'take.json', '--harp', 'C', '--level', 'natural']);
    expect(code).toBe(0);
    expect(out).toContain('not playable: 2 cannot be sounded, 50 % can');
    expect(out).toContain('bar 1, beat 2: Bb4 needs a technique beyond the level');
    expect(out).toContain('at level bends: effort');
  });

  test('path says how many more events cannot be sounded than it lists', async () => {
    const low = makeLine(
      Array.from({ length: 8 }, (_, at) => ({ start: at * 960, duration: 960, pitch: 50 })),
    );
    const { out } = await read(['path', 'take.json', '--harp', 'C'], low);
    expect(out).toContain('  and 3 more');
    expect(out).toContain('an octave up: effort');
  });

  test('path says of ways that cost the same which is taken, and of no effort that there is none', async () => {
    const one = makeLine([{ start: 0, duration: 960, pitch: 67 }]);
    const { out } = await read(['path', 'take.json', '--harp', 'C'], one);
    expect(out).toMatch(/\n1 +-2 +G4 +0 +0\.6 s in +as easy as \+3, which stands later\n/u);
    expect(out).toContain('effort 0 points, worst 0: none\n');
  });

  test('path says an octave down where that is playable, and nothing where nothing is', async () => {
    const high = makeLine([{ start: 0, duration: 960, pitch: 98 }]);
    expect(
      (await read(['path', 'take.json', '--harp', 'C', '--level', 'natural'], high)).out,
    ).toMatch(/an octave down: effort 0/u);
    const wide = makeLine([
      { start: 0, duration: 960, pitch: 30 },
      { start: 960, duration: 960, pitch: 115 },
    ]);
    const { out } = await read(['path', 'take.json', '--harp', 'C'], wide);
    expect(out).toContain('2 cannot be sounded, 0 % can');
    expect(out).not.toContain('it can be played');
  });

  test('path --tempo and --objective change what is searched', async () => {
    const effort = async (...more: string[]) =>
      JSON.parse((await read(['path', 'take.json', '--harp', 'C', '--json', ...more])).out);
    expect((await effort('--tempo', '400')).terms.hold).toBeLessThan(
      (await effort('--tempo', '40')).terms.hold,
    );
    expect((await effort('--objective', 'worst')).path.objective).toBe('worst');
  });

  test.each([
    [['path', 'x', '--harp', 'C', '--model', 'begginer'], /did you mean beginner\?/u],
    [['path', 'x', '--harp', 'C', '--objective', 'wrost'], /did you mean worst\?/u],
    [['path', 'x', '--harp', 'C', '--tempo', 'fast'], /"fast" .*felt beats a minute/u],
    [['path', 'x', '--harp', 'C', '--count', '0'], /a number of ways/u],
    [['path', '--harp', 'C'], /missing required argument 'line'/u],
  ])('path refuses %j in one line and exits with 2', async (words, message) => {
    const { code, out, err } = await read(words);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(message);
  });

  test('path reads ABC too, and tab by the harp', async () => {
    const text = (abc: string) =>
      runWords(['path', 'x', '--harp', 'C'], { readBytes: () => new TextEncoder().encode(abc) });
    expect((await text('X:1\nL:1/4\nK:G\nG _B c|]\n')).out).toContain("-3'");
    expect((await text("-2 -3' +4\n")).out).toContain('Bb4');
  });

  test('path refuses a file that is no line', async () => {
    expect(await read(['path', 'x', '--harp', 'C'], { notes: 7 })).toMatchObject({
      code: 2,
      out: '',
    });
    expect((await read(['path', 'x', '--harp', 'C'], { notes: [] })).err).toContain(
      'holds no note',
    );
  });
});
