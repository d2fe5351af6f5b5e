import { describe, expect, test } from 'vitest';
import { runWords } from '../command/run-words.fixture.js';

const WORDS = ['target', '--key', 'G', '--harp', 'C'];

describe('reedplate target', () => {
  test('reedplate target --shapes lists whole, partial, coloured and contradicting shapes', () => {
    const { code, out } = runWords([...WORDS, '--shapes'], {});
    expect(code).toBe(0);
    expect(out).toMatch(/^G7 +complete +draw +1-2-3-4-5 {2}2-3-4-5$/mu);
    expect(out).toMatch(/^C7 +partial +blow +1-2-3 \(-b7\)/mu);
    expect(out).toMatch(/^D7 +partial +draw +4,6 \(-3 -b7\)/mu);
    expect(out).toMatch(/^D7 +contradicting +draw .*4-5 \(-3 -5 -b7 !b3\)/mu);
  });

  test('reedplate target lists no shapes unasked, but holds them in JSON', () => {
    expect(runWords(WORDS, {}).out).not.toContain('contradicting');
    const { shapes } = JSON.parse(runWords([...WORDS, '--json'], {}).out);
    expect(shapes.map(({ chord }: { chord: string }) => chord)).toEqual(['G7', 'C7', 'D7']);
  });

  test('reedplate target judges clashes by the style', () => {
    const clashOf = (style: string): unknown => {
      const { shapes } = JSON.parse(runWords([...WORDS, '--json', '--style', style], {}).out);
      const five = shapes.find(({ chord }: { chord: string }) => chord === 'D7').shapes;
      const pair = five.find(
        ({ breath, holes }: { breath: string; holes: readonly number[] }) =>
          breath === 'draw' && holes.join() === '4,5',
      );
      return pair.clashes[0].roughness;
    };
    expect(clashOf('traditional')).toBe(0.3);
    expect(clashOf('bright-major')).toBe(0.9);
  });
});
