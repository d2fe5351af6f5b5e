import { makePlayer } from '@reedplate/layout';
import { describe, expect, test } from 'vitest';
import { runWords } from './run-words.fixture.js';

const LEE = makePlayer(['natural', { technique: 'bend', holes: [4] }], {
  id: 'lee',
  name: 'Lee',
  splits: [],
});
const TAKE = JSON.stringify({ notes: [{ start: 0, duration: 960, pitch: 70 }] });
const files = (path: string): string => (path === 'lee.json' ? JSON.stringify(LEE) : TAKE);

const run = async (...words: readonly string[]) =>
  await runWords(words, {
    readText: files,
    writeBytes: () => {},
    readBytes: (path) => new TextEncoder().encode(files(path)),
  });

/** Each verb that has a level, with what it needs. */
const VERBS: readonly (readonly string[])[] = [
  ['pick', '--key', 'G'],
  ['setlist', 'G', 'C'],
  ['scale', '--harp', 'C', '--key', 'G'],
  ['target', '--key', 'G', '--harp', 'C'],
  ['practice', '--key', 'G', '--harp', 'C', '--kind', 'arpeggios'],
  ['handout', '--key', 'G', '--harp', 'C'],
  ['score', 'take.json', '--key', 'G', '--harp', 'C'],
  ['path', 'take.json', '--harp', 'C'],
  ['fit', 'take.json'],
  ['picture', 'harp', '--harp', 'C'],
];

describe('--player', () => {
  test.each(VERBS)(
    'reedplate %s takes a player from a file, and a level without one',
    async (...words) => {
      const byLevel = await run(...words, '--level', 'natural');
      const byPlayer = await run(...words, '--player', 'lee.json');
      expect([byLevel.err, byPlayer.err, byLevel.code, byPlayer.code]).toEqual(['', '', 0, 0]);
      expect((await run(...words, '--level', 'bends')).out).toBe((await run(...words)).out);
    },
  );

  test('reedplate path names the player, and says what is beyond', async () => {
    const { out } = await run('path', 'take.json', '--harp', 'C', '--player', 'lee.json');
    expect(out).toContain('(intermediate, Lee)');
    expect(out).toContain('at level bends');
  });

  test('reedplate refuses what is no player, with its file and field', async () => {
    const { code, err } = await runWords(['pick', '--key', 'G', '--player', 'lee.json'], {
      readText: () => '{"skills": [{"technique": "bent"}]}',
    });
    expect(code).toBe(2);
    expect(err).toMatch(/"bent".*skills\[0\], file lee\.json.*did you mean bend\?/u);
  });
});
