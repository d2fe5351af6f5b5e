import { writeMidi } from '@reedplate/interchange';
import { makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { runWords } from './run-words.fixture.js';

const line = (title: string, pitches: readonly number[]) =>
  makeLine(
    pitches.map((pitch, at) => ({ start: at * 960, duration: 900, pitch })),
    { title },
  );
const tune = line('Tune', [67, 71, 74, 71]);
const other = line('Second', [72, 76, 79, 76, 72]);

/** Two voices, neither of them less of a tune than the other. */
const TWO_PARTS = writeMidi({
  line: tune,
  parts: [
    { name: 'Tune', line: tune },
    { name: 'Second', line: other },
  ],
});

/** Every verb that reads a line from a file, and what it needs besides. */
const VERBS = [
  ['score', ['take.mid', '--key', 'G']],
  ['fit', ['take.mid']],
  ['path', ['take.mid', '--harp', 'C']],
  ['pick', ['--key', 'G', '--line', 'take.mid']],
  ['convert', ['take.mid', '-', '--to', 'line']],
  ['picture', ['line', '--take', 'take.mid', '--harp', 'C', '--text']],
] as const;

async function run(verb: string, words: readonly string[]) {
  const written: Uint8Array[] = [];
  const answer = await runWords([verb, ...words], {
    readBytes: () => TWO_PARTS,
    writeBytes: (_, bytes) => void written.push(bytes),
  });
  return { ...answer, out: answer.out + written.map((bytes) => new TextDecoder().decode(bytes)) };
}

describe('--part', () => {
  test.each(VERBS)('reedplate %s takes the part that is asked for', async (verb, words) => {
    const [first, second] = [
      await run(verb, [...words, '--part', '1']),
      await run(verb, [...words, '--part', 'Second']),
    ];
    expect([first.code, second.code]).toEqual([0, 0]);
    if (verb !== 'pick') expect(second.out).not.toBe(first.out);
  });

  test.each(VERBS)('reedplate %s refuses a part that the file lacks', async (verb, words) => {
    const { code, err } = await run(verb, [...words, '--part', '3']);
    expect(code).toBe(2);
    expect(err).toContain('1 (Tune), 2 (Second)');
  });
});
