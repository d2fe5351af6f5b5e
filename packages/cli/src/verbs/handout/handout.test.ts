import { PRACTICE_KINDS } from '@reedplate/practice';
import { describe, expect, test, vi } from 'vitest';
import { runWords } from '../../shared/run-words.fixture.js';
import { findStaffDrawer } from './staff-drawer.js';

// Verovio takes its time on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

const WORDS = ['handout', '--key', 'G', '--harp', 'C', '--form', 'quick-change'];

/** The page that the command writes. */
async function write(...words: readonly string[]) {
  let html = '';
  const outcome = await runWords([...WORDS, ...words, '-o', 'lesson.html'], {
    writeBytes: (_, bytes) => {
      html = new TextDecoder().decode(bytes);
    },
  });
  return { ...outcome, html };
}

describe('reedplate handout', () => {
  test('reedplate handout writes a page with chart, harps, lines and tab, and says so', async () => {
    const { code, out, err, html } = await write('--no-staff', '--tempo', '96');
    expect([code, err]).toEqual([0, '']);
    expect(out).toBe('wrote lesson.html: open it and print it\n');
    const headings = [...html.matchAll(/<h2>([^<]*)<\/h2>/gu)].map(([, name]) => name);
    expect(headings).toEqual([
      ...['The chart', 'The chords on the harp', 'Roots', 'Chords'],
      ...['A riff through the form: wire fence', 'The turnaround: turn five blue', 'Take care'],
    ]);
    expect(html).toContain('<dt>Tempo</dt><dd>96 beats a minute</dd>');
    expect(html).toContain('>(-2-3-4-5)</text>');
    expect(html).not.toContain('as staff notation');
  });

  test.each(PRACTICE_KINDS)('reedplate handout --kinds %s has a section of it', async (kind) => {
    const { code, html } = await write('--no-staff', '--kinds', kind);
    expect(code).toBe(0);
    const title = kind.charAt(0).toUpperCase() + kind.slice(1).replaceAll('-', ' ');
    expect(html).toContain(`<h2>${title}</h2>`);
  });

  test('reedplate handout takes a title, a theme and a mirrored harp', async () => {
    const { html } = await write('--no-staff', '--title', 'Week <1>', '--theme', 'dark');
    expect(html).toContain('<h1>Week &lt;1&gt;</h1>');
    expect(html).toContain('background: #15171a');
    const plain = (await write('--no-staff')).html;
    const mirrored = (await write('--no-staff', '--mirrored')).html;
    expect(mirrored).not.toBe(plain);
    expect(mirrored.length).toBeGreaterThan(plain.length / 2);
  });

  test('reedplate handout draws staff notation with Verovio, each note and no id twice', async () => {
    const { code, html } = await write('--kinds', 'roots,arpeggios', '--no-phrases');
    expect(code).toBe(0);
    expect(html).toContain('aria-label="Roots as staff notation"');
    expect(html).toContain('aria-label="Arpeggios as staff notation"');
    // 12 roots and 48 tones of arpeggios.
    expect(html.match(/class="note"/gu)).toHaveLength(60);
    const ids = [...html.matchAll(/ id="([^"]+)"/gu)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('reedplate handout has the phrases asked for, each over its bar', async () => {
    const { code, html } = await write('--no-staff', '--phrases', 'stair@5,turn-five@11');
    expect(code).toBe(0);
    const headings = [...html.matchAll(/<h2>([^<]*)<\/h2>/gu)].map(([, name]) => name);
    expect(headings.slice(4, -1)).toEqual([
      expect.stringMatching(/^Stair/u),
      expect.stringMatching(/^Turn five/u),
    ]);
    const titles = [...html.matchAll(/<title id="[^"]*">([^<]*)<\/title>/gu)].map(
      ([, name]) => name,
    );
    expect(titles).toContain('Stair, bar 5');
    expect(titles).toContain('Turn five, bars 11 to 12');
    expect(html).toMatch(/<p>It trains [^<]+\.<\/p>/u);
  });

  test('reedplate handout --no-phrases leaves riff and turnaround out', async () => {
    const { html } = await write('--no-staff', '--no-phrases');
    expect(html).not.toContain('turnaround:');
    expect(html.match(/dizzy/gu)).toHaveLength(1);
  });

  test('reedplate handout puts a riff and a turnaround on every position that has one', async () => {
    for (const harp of ['C', 'G', 'F']) {
      const { html } = await write('--no-staff', '--harp', harp);
      expect(html).toContain('<h2>The turnaround: ');
    }
  });

  test('reedplate handout of a waltz has its lines and no phrases, which are all in four', async () => {
    const { code, html } = await write('--no-staff', '--form', 'waltz', '--kinds', 'roots');
    expect(code).toBe(0);
    expect(html.match(/<h2>[^<]+/gu)?.filter((title) => /riff|turnaround/iu.test(title))).toEqual(
      [],
    );
    expect(html).toContain('<h2>Roots');
  });

  test('reedplate handout says what a phrase trains, where it says so, and what is played otherwise', async () => {
    const words = ['--no-staff', '--kinds', 'roots', '--level', 'natural'];
    const { html } = await write(...words, '--phrases', 'third-from-below');
    expect(html).toContain('It trains ');
    expect(html).toContain('Played otherwise here: 1 note.');
  });

  test('reedplate handout - writes the page alone to standard output', async () => {
    let path = '';
    const { out } = await runWords([...WORDS, '--no-staff', '-o', '-'], {
      writeBytes: (file) => {
        path = file;
      },
    });
    expect([path, out]).toEqual(['-', '']);
  });

  test.each([
    [['--kinds', 'scales'], /scales/u],
    [['--theme', 'drak'], /dark/u],
    [['--level', 'expert'], /expert/u],
    [['--tempo', 'fast'], /felt beats a minute/u],
    [['--form', 'none'], /none/u],
    [['--phrases', 'stiar'], /stair/u],
    [['--phrases', 'stair@0'], /a bar/u],
    [['--phrases', 'stair@x'], /a bar/u],
    [['--phrases', 'stair@5@6'], /stair/u],
    [['--phrases', ' , '], /one word/u],
  ])('reedplate handout %j says in one line what is wrong', async (words, message) => {
    const { code, out, err, html } = await write('--no-staff', ...words);
    expect([code, out, html]).toEqual([2, '', '']);
    expect(err).toMatch(message);
    expect(err).toMatch(/^reedplate: [^\n]+\n$/u);
  });
});

describe('findStaffDrawer', () => {
  const missing = (code: string) => async () => {
    throw Object.assign(new Error('no such module'), { code });
  };

  test.each(['ERR_MODULE_NOT_FOUND', 'MODULE_NOT_FOUND'])(
    'findStaffDrawer is undefined where Verovio is not installed (%s)',
    async (code) => {
      expect(await findStaffDrawer(missing(code))).toBeUndefined();
    },
  );

  test('findStaffDrawer hides no other failure', async () => {
    await expect(findStaffDrawer(missing('EACCES'))).rejects.toThrow(/no such module/u);
  });
});
