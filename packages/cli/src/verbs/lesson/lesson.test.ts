import { describe, expect, test } from 'vitest';
import { runWords } from '../../shared/run-words.fixture.js';

const SONG = ['lesson', '--form', 'quick-change', '--key', 'A', '--level', 'natural'];

describe('reedplate lesson', () => {
  test('prints the chords of the key and each step with its tab', async () => {
    const { out, code } = await runWords(SONG);
    expect(code).toBe(0);
    expect(out).toContain('The chords of A:');
    expect(out).toContain('1. Hear the changes');
    expect(out).toContain('6. Choruses of your own');
  });

  test('writes a folder with the page, the band and every line in three formats', async () => {
    const written = new Map<string, ReadonlyMap<string, Uint8Array>>();
    const writeFolder = (path: string, files: ReadonlyMap<string, Uint8Array>) =>
      void written.set(path, files);
    const { code, err } = await runWords([...SONG, '-o', 'lesson'], { writeFolder });
    expect([code, err]).toEqual([0, '']);
    const files = written.get('lesson');
    expect([...(files?.keys() ?? [])].slice(0, 3)).toEqual([
      'handout.html',
      'lesson.txt',
      'band.mid',
    ]);
    expect(files?.size).toBe(3 + 6 * 3);
    expect(new TextDecoder().decode(files?.get('band.mid')?.slice(0, 4))).toBe('MThd');
    expect(new TextDecoder().decode(files?.get('handout.html'))).toContain('Hear the changes');
  });

  test.each([
    ['too few minutes', ['--minutes', '3'], 'minutes'],
    ['a goal there is not', ['--goals', 'riffs'], 'riff'],
  ])('refuses %s', async (_, more, said) => {
    const { code, err } = await runWords([...SONG, ...more]);
    expect(code).not.toBe(0);
    expect(err).toContain(said);
  });
});
