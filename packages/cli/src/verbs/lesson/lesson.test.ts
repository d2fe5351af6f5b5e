import { readMidi } from '@reedplate/interchange';
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

  test('writes each line at the tempo to begin with, in the feel of the song, over its chords', async () => {
    let files: ReadonlyMap<string, Uint8Array> = new Map();
    const writeFolder = (_: string, written: ReadonlyMap<string, Uint8Array>) => {
      files = written;
    };
    await runWords([...SONG, '-o', 'lesson'], { writeFolder });
    const { line, chart } = readMidi(files.get('4-riff.mid') ?? new Uint8Array());
    expect(line.tempo).toBe(66);
    expect(chart?.spans.slice(0, 2).map(({ chord }) => chord?.symbol)).toEqual(['A7', 'D7']);
    const offBeats = line.notes.map(({ start }) => start % 960).filter((at) => at > 0);
    // A shuffle: the second eighth comes on the third third of the beat.
    expect(new Set(offBeats)).toEqual(new Set([640]));
    const tab = new TextDecoder().decode(files.get('1-changes.tab'));
    expect(tab.trimEnd().split('\n').slice(3)).toHaveLength(3);
  });

  test('prints four bars of tab in a row, under their chords', async () => {
    const { out } = await runWords(SONG);
    expect(out).toContain('bars 1 to 4: A7 | D7 | A7 | A7\n  -2:2 -2 r | +4:2 +4 r |');
    expect(out).toContain('bars 11 to 12: A7 | E7\n');
  });

  test('takes bars for a form, and picks from the harps owned', async () => {
    const words = ['lesson', '--key', 'G', '--goals', 'riff', '--form', 'I7 | IV7 | I7'];
    const { out } = await runWords([...words, '--own', 'F,C']);
    expect(out).toMatch(/^custom in G, harp in C, 2nd position: 20 minutes\n/u);
    expect(out).toContain('Loop bars 1 to 3, ');
  });

  test.each([
    ['a folder that is standard output', ['-o', '-'], 'expected the name of a folder'],
    ['too few minutes', ['--minutes', '3'], 'minutes'],
    ['a goal there is not', ['--goals', 'riffs'], 'riff'],
  ])('refuses %s', async (_, more, said) => {
    const { code, err } = await runWords([...SONG, ...more]);
    expect(code).not.toBe(0);
    expect(err).toContain(said);
  });
});
