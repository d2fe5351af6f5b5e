import { makeLine } from '@reedplate/line';
import { THEME_IDS, THEMES } from '@reedplate/picture';
import { describe, expect, test } from 'vitest';
import { runWords } from '../../shared/run-words.fixture.js';
import { PICTURE_IDS, type PictureId } from './drawers.js';

const take = makeLine(
  [67, 70, 71, 74, 72, 76].map((pitch, at) => ({ start: at * 960, duration: 960, pitch })),
  { title: 'Riff', tempo: 90 },
);

/** Words that each picture needs. */
const NEEDS: Readonly<Record<PictureId, readonly string[]>> = {
  harp: ['--harp', 'C', '--key', 'G', '--chord', 'G7'],
  chart: ['--form', 'basic', '--key', 'G', '--harp', 'C'],
  line: ['--take', 'take.json', '--harp', 'C', '--key', 'G'],
  score: ['--take', 'take.json', '--form', 'basic', '--key', 'G'],
  breath: ['--take', 'take.json', '--harp', 'C'],
  effort: ['--take', 'take.json', '--harp', 'C'],
  fit: ['--take', 'take.json'],
  position: ['--key', 'G', '--harp', 'C'],
};

/** The file that the command writes. */
async function draw(what: string, ...words: readonly string[]) {
  let file = '';
  const outcome = await runWords(['picture', what, ...words, '-o', 'out.svg'], {
    readText: () => JSON.stringify(take),
    writeBytes: (_, bytes) => {
      file = new TextDecoder().decode(bytes);
    },
  });
  return { ...outcome, file };
}

describe('reedplate picture', () => {
  test.each(PICTURE_IDS)('reedplate picture %s writes an SVG image and says so', async (what) => {
    const { code, out, err, file } = await draw(what, ...NEEDS[what]);
    expect([code, err, out]).toEqual([0, '', 'wrote out.svg\n']);
    expect(file).toMatch(/^<svg xmlns="[^"]+" role="img".*<\/svg>\n$/su);
  });

  test.each(PICTURE_IDS)('reedplate picture %s --text says the same in words', async (what) => {
    const { file } = await draw(what, ...NEEDS[what], '--text', '--title', 'Mine');
    expect(file.split('\n')[0]).toBe('Mine');
    expect(file.split('\n').length).toBeGreaterThan(3);
    expect(file).not.toContain('<');
  });

  test.each(THEME_IDS)('reedplate picture --theme %s, --width and --title', async (theme) => {
    const words = ['--theme', theme, '--width', '900', '--title', 'A <harp>'];
    const { file } = await draw('harp', '--harp', 'C', ...words);
    expect(file).toContain(`fill="${THEMES[theme].paper}"`);
    expect(file).toContain('width="900"');
    expect(file).toContain('A &lt;harp&gt;</title>');
  });

  test('reedplate picture harp marks the chord, names degrees, mirrors', async () => {
    const text = async (...words: readonly string[]) =>
      (await draw('harp', '--harp', 'C', ...words, '--text')).file;
    expect(await text('--key', 'G', '--chord', 'G7')).toContain('-2 G (1 of the chord)');
    expect(await text('--key', 'G', '--degrees')).toContain('-2 1');
    expect(await text('--level', 'natural')).not.toContain("-1'");
    const plain = (await draw('harp', '--harp', 'C')).file;
    expect((await draw('harp', '--harp', 'C', '--mirrored')).file).not.toBe(plain);
  });

  test('reedplate picture chart draws a slide of 16 to 9, and a chart for a band', async () => {
    const { file } = await draw('chart', ...NEEDS.chart, '--slide');
    expect(file).toContain('viewBox="0 0 1920 1080"');
    const band = (await draw('chart', ...NEEDS.chart, '--band')).file;
    expect(band).not.toBe((await draw('chart', ...NEEDS.chart)).file);
  });

  test('reedplate picture score follows the take over its chart', async () => {
    const { file } = await draw('score', ...NEEDS.score, '--text');
    expect(file).toMatch(/^bar 1 \(G7\): \d+ %; G7 lands on the chord; G4 1 root/mu);
    const words = ['--take', 'take.json', '--key', 'G', '--text'];
    expect((await draw('score', ...words)).file).toBe(file);
  });

  test.each([
    [['harp'], /--harp/u],
    [['chart'], /--key/u],
    [['line', '--harp', 'C'], /--take/u],
    [['score', '--take', 'take.json'], /--key/u],
    [['position'], /--key/u],
    [['harmonica', '--harp', 'C'], /harp/u],
    [['harp', '--harp', 'H'], /"H"/u],
    [['harp', '--harp', 'C', '--theme', 'drak'], /dark/u],
    [['harp', '--harp', 'C', '--width', '10'], /pixels of width/u],
    [['harp', '--harp', 'C', '--width', 'wide'], /pixels of width/u],
    [['harp', '--harp', 'C', '--chord', 'H7'], /"H7"/u],
    [['effort', '--take', 'take.json', '--harp', 'C', '--level', 'natural'], /can play/u],
  ])('reedplate picture %j says in one line what is wrong', async (words, message) => {
    const [what = '', ...rest] = words;
    const { code, out, err, file } = await draw(what, ...rest);
    expect([code, out, file]).toEqual([2, '', '']);
    expect(err).toMatch(message);
    expect(err).toMatch(/^reedplate: [^\n]+\n$/u);
  });

  test('reedplate picture writes no image under the name of another kind', async () => {
    const written: string[] = [];
    const words = ['picture', 'harp', '--harp', 'C', '-o', 'harp.png'];
    const writeBytes = (path: string) => void written.push(path);
    const { code, err } = await runWords(words, { writeBytes });
    expect([code, err]).toEqual([
      2,
      'reedplate: "harp.png" is not in a known format: expected a name that ends in .svg\n',
    ]);
    await runWords([...words.slice(0, -1), 'harp.txt', '--text'], { writeBytes });
    await runWords(words.slice(0, -2), { writeBytes });
    expect(written).toEqual(['harp.txt', '-']);
  });
});
