import { tuningById } from '@reedplate/layout';
import type { Chord } from '@reedplate/pitch';
import { describe, expect, test } from 'vitest';
import { runWords } from '../../shared/run-words.fixture.js';

const WORDS = ['target', '--key', 'G', '--harp', 'C'];

describe('reedplate target', () => {
  test('reedplate target --shapes lists whole, partial, coloured and clashing shapes', async () => {
    const { code, out } = await runWords([...WORDS, '--shapes'], { width: 400 });
    expect(code).toBe(0);
    expect(out).toMatch(/^G7 +complete +draw +1-2-3-4-5 {2}2-3-4-5$/mu);
    expect(out).toMatch(/^C7 +partial +blow +1-2-3 \(-b7\)/mu);
    expect(out).toMatch(/^D7 +partial +draw +4,6 \(-3 -b7\)/mu);
    expect(out).toMatch(/^D7 +clashing +draw .*4-5 \(-3 -5 -b7 !b3\)/mu);
  });

  test('reedplate target gives no shapes unasked, in text or in JSON', async () => {
    expect((await runWords(WORDS, {})).out).not.toContain('clashing');
    const chords = JSON.parse((await runWords([...WORDS, '--json'], {})).out);
    expect(chords.map(({ chord }: { chord: Chord }) => chord.symbol)).toEqual(['G7', 'C7', 'D7']);
    expect(chords[0]).not.toHaveProperty('shapes');
  });

  test('reedplate target shows every tone of every chord, sixths, ninths and fourths too', async () => {
    const tonesOf = async (form: string) => (await runWords([...WORDS, '--form', form], {})).out;
    expect(await tonesOf('I9 | IV9')).toMatch(/ other tones +whole chord\n1 .* 9: -3'' -6 -10 /u);
    expect(await tonesOf('I6 | IV7')).toMatch(/^1 +I6 +G6 .* 6: \+2 \+5 \+8 /mu);
    expect(await tonesOf('I7sus4 | I7')).toMatch(/ 4: \+1 \+4 \+7 \+10 +none$/mu);
    expect(await tonesOf('basic')).not.toContain('other tones');
  });

  test('reedplate target has a power chord whole on two neighbours', async () => {
    const { out } = await runWords([...WORDS, '--form', 'I5 | IV5'], {});
    expect(out).toMatch(/^2 +IV5 +C5 .* blow 3-4, blow 6-7, blow 9-10$/mu);
  });

  test('reedplate target passes over a break', async () => {
    const { out } = await runWords(
      ['target', '--key', 'G', '--harp', 'C', '--form', 'I7 | N.C. | IV7'],
      {},
    );
    expect(out.match(/^\d+ +\S+ +\S+/gmu)).toEqual(['1    I7   G7', '3    IV7  C7']);
  });

  test('reedplate target judges clashes by the style', async () => {
    const clashOf = async (style: string): Promise<unknown> => {
      const chords = JSON.parse(
        (await runWords([...WORDS, '--shapes', '--json', '--style', style], {})).out,
      );
      const five = chords.find(({ chord }: { chord: Chord }) => chord.symbol === 'D7').shapes;
      const pair = five.find(
        ({ breath, holes }: { breath: string; holes: readonly number[] }) =>
          breath === 'draw' && holes.join() === '4,5',
      );
      return pair.clashes[0].roughness;
    };
    expect(await clashOf('blues')).toBe(0.3);
    expect(await clashOf('major')).toBe(0.9);
  });

  test('reedplate target reads a tuning from a JSON file', async () => {
    const tuning = JSON.stringify(tuningById('raised-fifth-draw'));
    const ask = async (word: string) =>
      (await runWords([...WORDS, '--tuning', word], { readText: () => tuning })).out;
    expect(await ask('./mine.json')).toBe(await ask('raised-fifth-draw'));
    expect(await ask('./mine.json')).not.toBe((await runWords(WORDS, {})).out);
  });

  test.each([
    ['a level', ['--level', 'expert'], /"expert" is not one of the choices/u],
    ['a style', ['--style', 'loud'], /"loud" is not one of the choices/u],
    ['a tuning', ['--tuning', 'bent'], /"bent" is not a tuning/u],
    ['a key', ['--key', 'H'], /"H" is not a key/u],
  ])('reedplate target refuses %s that does not exist, in one line', async (_, words, message) => {
    const { code, out, err } = await runWords([...WORDS, ...words], {});
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(message);
    expect(err).toMatch(/^reedplate: [^\n]+\n$/u);
  });
});
