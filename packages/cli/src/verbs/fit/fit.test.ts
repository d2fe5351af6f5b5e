import { makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { runWords } from '../../shared/run-words.fixture.js';

const SCALE = makeLine(
  [67, 69, 71, 72, 74, 76, 78, 79].map((pitch, at) => ({ start: at * 480, duration: 480, pitch })),
);
const read = (...words: readonly string[]) =>
  runWords(['fit', 'scale.json', ...words], {
    readBytes: () => new TextEncoder().encode(JSON.stringify(SCALE)),
  });

describe('reedplate fit', () => {
  test('fit prints a ranking of the twelve keys, and how many were searched', async () => {
    const { out, code } = await read('--count', '2');
    expect(code).toBe(0);
    expect(out).toMatch(/^harps for 8 events \(intermediate, bends\)\n/u);
    expect(out).toMatch(/\n1 +G +0 +100 % /u);
    expect(out).toMatch(/\n12 considered, \d+ searched/u);
  });

  test('fit takes keys, tunings, registers and moves of the line', async () => {
    const report = JSON.parse(
      (
        await read(
          '--keys',
          'C, G',
          '--tunings',
          'standard,raised-fifth-draw',
          '--registers',
          'low,standard',
          '--transpose=-12,0',
          '--json',
        )
      ).out,
    );
    expect(report.considered).toBe(16);
    expect(JSON.parse((await read('--tunings', 'all', '--json')).out).considered).toBeGreaterThan(
      12 * 20,
    );
  });

  test('fit says by how many semitones the line moves, up and down', async () => {
    const { out } = await read('--keys', 'G', '--transpose', '12,0,-12');
    const moves = out.match(/^\d +G +\S+/gmu)?.map((row) => row.split(/ +/u)[2]);
    expect(new Set(moves)).toEqual(new Set(['+12', '-12', '0']));
  });

  test('fit --csv prints the same ranking as --json', async () => {
    const { harps } = JSON.parse((await read('--json', '--all-reeds')).out);
    const [head = '', ...rows] = (await read('--csv')).out.trimEnd().split('\n');
    const columns = head.split(',');
    expect(columns.slice(0, 4)).toEqual(['rank', 'harp', 'key', 'tuning']);
    expect(rows).toHaveLength(harps.length);
    for (const [at, { harp, ...found }] of harps.entries()) {
      const cells = rows[at]?.split(',') ?? [];
      const expected = {
        ...found,
        rank: at + 1,
        harp: harp.key,
        key: harp.key,
        tuning: harp.tuning,
        register: harp.register,
      };
      expect(cells).toEqual(columns.map((column) => `${expected[column]}`));
    }
  });

  test.each([
    [['--keys', 'H'], /did you mean B\?/u],
    [['--tunings', 'standrad'], /did you mean standard\?/u],
    [['--registers', 'hihg'], /did you mean high\?/u],
    [['--transpose', 'up'], /"up" .*semitones/u],
    [['--transpose', '0.5'], /semitones/u],
    [['--count', '0'], /a number of harps/u],
  ])('fit refuses %j in one line and exits with 2', async (words, message) => {
    const { code, out, err } = await read(...words);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(message);
  });
});
