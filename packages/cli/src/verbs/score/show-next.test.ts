import { scoreLine } from '@reedplate/chord-tone';
import { makeChart } from '@reedplate/form';
import { makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { runWords } from '../../shared/run-words.fixture.js';
import { showNext } from './show-next.js';

const chart = makeChart('basic', 'G');
const plain = (_: string, text: string) => text;
const score = (pitchOf: (root: number) => number) =>
  scoreLine(
    makeLine(
      chart.spans.map(({ start, chord }) => ({
        start,
        duration: 1920,
        pitch: pitchOf(chord?.tones[0]?.pitchClass ?? 7),
      })),
    ),
    chart,
  );
const home = score(() => 67);
const roots = score((root) => (root < 7 ? 72 + root : 60 + root));

describe('showNext', () => {
  test('showNext gives what to practise, and the command for it', () => {
    const ground = { key: 'G', form: 'I7 | IV7', harp: 'C' };
    const [, head, words, command] = showNext([home], ground, plain);
    expect([head, words]).toEqual([
      'practise next',
      '  1  The line stays on one chord: play the root of each chord as it comes, nothing else.',
    ]);
    expect(command).toBe(
      '     reedplate practice --kind roots-in-time --form "I7 | IV7" --key G --harp C',
    );
  });

  test('showNext has no command without a harp, nor where nothing is weak', () => {
    expect(showNext([home], { key: 'G', form: 'basic' }, plain).join()).not.toContain('reedplate');
    expect(showNext([roots], { key: 'G', form: 'basic', harp: 'C' }, plain)).toEqual([
      '',
      'practise next',
      expect.stringContaining('Nothing is weak'),
    ]);
  });

  test('reedplate score says it, and the command that it says runs', async () => {
    const take = JSON.stringify(
      makeLine(chart.spans.map(({ start }) => ({ start, duration: 1920, pitch: 67 }))),
    );
    const words = ['score', 'take.json', '--key', 'G', '--harp', 'C'];
    const { out } = await runWords(words, { readText: () => take });
    const [, command = ''] = /^ +reedplate (practice .*)$/mu.exec(out) ?? [];
    expect(command).toContain('--kind roots-in-time');
    const { code, out: exercise } = await runWords(command.split(' '));
    expect(code).toBe(0);
    expect(exercise).toContain('Land on the root of each chord');
  });
});
