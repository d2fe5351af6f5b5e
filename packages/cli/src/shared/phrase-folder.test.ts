import { describe, expect, test } from 'vitest';
import type { Terminal } from '../terminal.js';
import { runWords } from './run-words.fixture.js';

const GATE =
  'name: Gate\nkind: riff\nfrom: chord\ntrains: the gate\n-2 -4:1/2 -4:1/2 r:2\n\nname: Latch\nkind: turnaround\nharmony: I7 | V7\n-2 -3 -4 -2 | -4:3 r\n';
const FILES: ReadonlyMap<string, string> = new Map([
  ['mine/riffs.tab', GATE],
  [
    'mine/more.json',
    '[{"name": "Post", "notes": [{"at": 0, "length": 960, "degree": "1", "octave": 0}]}]',
  ],
  ['mine/notes.txt', 'not music'],
  ['bad/riffs.tab', 'name: Gate\n-2 -3\n-x'],
  ['bad-json/riffs.json', '[\n{"notes": [], "name": 7}]'],
  ['twice/a.tab', 'name: Gate\n-2'],
  ['twice/b.tab', 'name: Gate\n-3'],
  ['none/a.txt', ''],
]);
const disk: Partial<Terminal> = {
  listFolder: (folder) =>
    [...FILES.keys()]
      .filter((file) => file.startsWith(`${folder.replace(/\/$/u, '')}/`))
      .map((file) => file.split('/')[1] ?? ''),
  readText: (file) => FILES.get(file) ?? '',
};
const run = (...words: readonly string[]) => runWords(words, disk);

describe('--phrases-from', () => {
  test('reedplate phrases lists the phrases of a folder alone, file by file', async () => {
    const { out, code } = await run('phrases', '--phrases-from', 'mine/', '--json');
    expect(code).toBe(0);
    const ids = JSON.parse(out).map(({ id }: { id: string }) => id);
    expect(ids.sort()).toEqual(['gate', 'latch', 'post']);
    const { out: riffs } = await run('phrases', '--phrases-from', 'mine', '--kind', 'riff');
    expect(riffs).toMatch(/^1 phrase\n/u);
    expect(riffs).toContain('gate');
  });

  test('reedplate phrases shows one of a folder, and one of ours beside it', async () => {
    const song = ['--harp', 'D', '--key', 'A'];
    const { out } = await run('phrases', 'gate', 'stair', '--phrases-from', 'mine', ...song);
    expect(out).toContain('Gate: riff, position 2');
    expect(out).toContain('bar 1 on a harp in D, as written:');
    expect(out).toMatch(/^stair: riff/mu);
  });

  test('reedplate lesson takes riff and turnaround from the folder', async () => {
    const song = ['--form', 'basic', '--key', 'G', '--harp', 'C', '--level', 'natural'];
    const { out } = await run('lesson', ...song, '--phrases-from', 'mine');
    expect(out).toContain('A riff through the form: Gate');
    expect(out).toContain('The turnaround: Latch');
    expect(out).toContain('It trains the gate.');
  });

  test('reedplate compose draws in the manner of the folder', async () => {
    const song = ['compose', '--key', 'G', '--harp', 'C', '--json'];
    const own = await run(...song, '--phrases-from', 'mine');
    expect(own.code).toBe(0);
    expect(own.out).not.toBe((await run(...song)).out);
    const minor = await run(
      'compose',
      '--form',
      'minor',
      '--key',
      'Gm',
      '--harp',
      'C',
      '--phrases-from',
      'mine',
    );
    expect([minor.code, minor.err]).toEqual([2, expect.stringContaining('a phrase in minor')]);
  });

  test('reedplate handout puts a phrase of the folder on its page', async () => {
    let html = '';
    const words = ['handout', '--key', 'G', '--harp', 'C', '--no-staff', '--phrases-from', 'mine'];
    const writeBytes = (_: string, bytes: Uint8Array) => {
      html = new TextDecoder().decode(bytes);
    };
    await runWords([...words, '--phrases', 'gate@5', '-o', 'x.html'], { ...disk, writeBytes });
    expect(html).toContain('<h2>Gate</h2>');
    expect(html).toContain('It trains the gate.');
    await runWords([...words, '--phrases', 'post', '-o', 'x.html'], { ...disk, writeBytes });
    expect(html).toContain('<h2>Post</h2>');
    expect(html).not.toContain('It trains');
    await runWords([...words, '-o', 'x.html'], { ...disk, writeBytes });
    expect(html).toContain('<h2>A riff through the form: Gate</h2>');
  });

  test.each([
    ['bad', /"-x".*line 3, column 1.*file bad\/riffs\.tab/u],
    ['bad-json', /line 2/u],
    [
      'twice',
      /"gate".*\(file twice\/b\.tab\): expected another id than a phrase of twice\/a\.tab has/u,
    ],
    ['none', /a folder with \.tab or \.json files/u],
  ])('a folder %s is refused in one line that says where', async (folder, said) => {
    const { code, err, out } = await run('phrases', '--phrases-from', folder);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(said);
    expect(err).toMatch(/^reedplate: [^\n]+\n$/u);
  });
});
