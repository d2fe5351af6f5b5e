import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { tuningById } from '@reedplate/layout';
import { describe, expect, test } from 'vitest';
import { runWords } from '../../shared/run-words.fixture.js';

const TAKE = fileURLToPath(
  new URL('../../../../../examples/first-blues/take.json', import.meta.url),
);
const WORDS = ['score', 'take.json', '--form', 'quick-change', '--key', 'G', '--harp', 'C'];

function score(text: string, words: readonly string[] = WORDS) {
  return runWords(words, { readText: () => text });
}

describe('reedplate score', () => {
  const take = readFileSync(TAKE, 'utf8');

  // The take is ours: bar 6 holds a major seventh over C7, bar 9 stays on G over D7.
  test('reedplate score marks down the two bars that were played against the chords', async () => {
    const { bars } = JSON.parse((await score(take, [...WORDS, '--json'])).out);
    const poor = bars.filter(({ chordFit }: { chordFit: number }) => chordFit < 0.5);
    expect(poor.map(({ bar }: { bar: number }) => bar)).toEqual([6, 9]);
  });

  test('reedplate score prints every bar, every change and the reasons', async () => {
    const { code, out, err } = await score(take);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(
      /^A first chorus in G: quick-change in G on the C harp\n\nYou follow the changes.*\n\d+ of 100 /u,
    );
    for (let bar = 1; bar <= 12; bar += 1) {
      expect(out).toMatch(new RegExp(`^${bar} +[CDG]7 +[=.]{10} `, 'mu'));
    }
    expect(out).toMatch(/^9:1 +D7 +unresolved +0 %/mu);
    expect(out).toContain('  1  bar 6: B4 clashes with C7; try C5, the root (+4)');
  });

  test('reedplate score shows the degrees played in each bar, and how they stand to the chord', async () => {
    const { out } = await score(take);
    expect(out).toMatch(/^6 +C7 .* 7! 7! 5$/mu);
    expect(out).toMatch(/^9 +D7 .*4\?/mu);
  });

  test('reedplate score says how it heard the take, by the words that its help explains', async () => {
    const { out } = await score(take, [...WORDS, '--swing', '1.5', '--latency', '24']);
    expect(out).toContain('judged as blues, heard as eighths swung 1.5 to 1, 24 ticks late');
    expect((await score(take, [...WORDS, '--latency', '-24'])).out).toContain('24 ticks early');
    expect((await score(take)).out).toContain('judged as blues, heard as even eighths\n');
    const help = (await runWords(['score', '--help'])).out;
    for (const word of ['of 100', 'feedback']) {
      expect(out).toContain(word);
      expect(help).toMatch(new RegExp(`^ {2}${word} `, 'mu'));
    }
    // Statistics are for who asks why.
    expect(out).not.toMatch(/confiden|shuffl|chance|order/u);
    expect((await score(take, [...WORDS, '--why'])).out).toContain('in any order');
  });

  test('reedplate score prints no part of a beat as a long figure', async () => {
    const { out } = await score(take);
    expect(out).not.toMatch(/\d\.\d{3}/u);
    expect(out).not.toMatch(/beat \d+\.\d/u);
  });

  test('reedplate score reads a tuning from a JSON file, and gives its tab', async () => {
    const tuning = JSON.stringify(tuningById('raised-fifth-draw'));
    const readText = (path: string) => (path === 'mine.json' ? tuning : take);
    const ask = async (word: string) =>
      JSON.parse((await runWords([...WORDS, '--tuning', word, '--json'], { readText })).out);
    const [mine, known] = [await ask('mine.json'), await ask('raised-fifth-draw')];
    expect({ ...mine, harp: null }).toEqual({ ...known, harp: null });
    expect((await ask('mine.json')).harp.tuning).toBe((await ask('raised-fifth-draw')).harp.tuning);
  });

  test('reedplate score takes style, level, swing and latency', async () => {
    const words = [...WORDS, '--style', 'major', '--swing', '2', '--latency', '10', '--json'];
    const report = JSON.parse((await score(take, words)).out);
    expect(report).toMatchObject({
      style: 'major',
      alignment: { swing: 2, latency: 10 },
    });
  });

  test.each([
    [['--style', 'loud'], /"loud" is not one of the choices/u],
    [['--level', 'expert'], /"expert" is not one of the choices/u],
    [['--swing', 'much'], /"much" is not a number in range/u],
    [['--swing', '9'], /9 is not a number in range/u],
    [['--latency', '1.5'], /1.5 is not a number in range/u],
    [['--latency', '80'.concat('sec')], /"80sec" is not a number in range/u],
    [['--count-in', '-1'], /-1 is not a number in range/u],
    [['--bars', '8-5'], /"8-5" .*\(--bars\): expected the earlier bar first; did you mean 5-8\?/u],
    [['--bars', 'five'], /"five" .*\(--bars\): expected bars as 5-8, or one as 5/u],
    [['--bars', '0'], /^reedplate: 0 .*\(bars\): expected a bar of the chart, from 1 to 12\n/u],
    [
      ['--bars', '11-13'],
      /^reedplate: 13 .*\(bars\): expected a bar of the chart, from 1 to 12\n/u,
    ],
  ])('reedplate score refuses %j by name', async (words, message) => {
    const { code, out, err } = await score(take, [...WORDS, ...words]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(message);
  });

  test('reedplate score refuses a level that does not exist without a harp too', async () => {
    const { code, err } = await score(take, [
      'score',
      'take.json',
      '--key',
      'G',
      '--level',
      'expert',
    ]);
    expect(code).toBe(2);
    expect(err).toMatch(/"expert" is not one of the choices/u);
  });

  test('reedplate score --why says of every note why it counts as it does', async () => {
    const { out } = await score(take, [...WORDS, '--why']);
    const [before, said = ''] = out.split('\nnotes\n');
    expect(before?.startsWith((await score(take)).out)).toBe(true);
    const { notes } = JSON.parse((await score(take, [...WORDS, '--json'])).out);
    expect(said.trimEnd().split('\n')).toHaveLength(notes.length);
    expect(said).toMatch(/^ {2}bar 6, beat 1: B4 \(7 over C7\): a clash, .*; counts 0$/mu);
  });

  const line = JSON.parse(take);
  const BAR = 3840;
  const moved = (ticks: number) =>
    JSON.stringify({
      ...line,
      notes: line.notes.map((note: { start: number }) => ({ ...note, start: note.start + ticks })),
    });
  const scoreOf = async (text: string, words: readonly string[] = []) =>
    JSON.parse((await score(text, [...WORDS, '--json', ...words])).out);

  test('reedplate score names a shift, and says how to tell it of a count-in', async () => {
    const { out } = await score(moved(BAR));
    expect(out).toContain('You came in 1 bar late');
    expect(out).toContain('If it does, say so: --count-in 1\n');
    const told = await score(moved(BAR), [...WORDS, '--count-in', '1']);
    expect(told.out).toContain('A count-in of 1 bar was taken off.');
    expect((await scoreOf(moved(BAR), ['--count-in', '1'])).total).toBe(
      (await scoreOf(take)).total,
    );
  });

  test('reedplate score takes the count-in that a file says', async () => {
    const counted = JSON.stringify({ ...JSON.parse(moved(2 * BAR)), countIn: 2 });
    expect(await scoreOf(counted)).toMatchObject({
      total: (await scoreOf(take)).total,
      alignment: { countIn: 2 },
    });
  });

  test('reedplate score --bars judges a range of bars alone', async () => {
    const { bars, notes } = await scoreOf(take, ['--bars', '5-8']);
    const judged = notes.filter((note: { class: string }) => note.class !== 'unjudged');
    expect(judged.every(({ bar }: { bar: number }) => bar >= 4 && bar <= 8)).toBe(true);
    expect(
      bars.filter(({ chordFit }: { chordFit: number | null }) => chordFit !== null),
    ).toHaveLength(4);
    expect((await score(take, [...WORDS, '--bars', '6'])).out).toMatch(/^6 +C7 /mu);
    expect((await score(take, [...WORDS, '--bars', '6'])).out).not.toMatch(/^7 +G7 /mu);
  });

  test('reedplate score --latency takes milliseconds where a tempo is known', async () => {
    const { latency } = (
      await scoreOf(JSON.stringify({ ...line, tempo: 120 }), ['--latency', '50ms'])
    ).alignment;
    expect(latency).toBe(96);
  });

  test('reedplate score shows how several takes get better', async () => {
    const stays = JSON.stringify({
      ...line,
      notes: line.notes.map((note: object) => ({ ...note, pitch: 67 })),
    });
    const readText = (file: string) => (file === 'first.json' ? stays : take);
    const words = ['score', 'first.json', 'second.json', ...WORDS.slice(2)];
    const { out, code } = await runWords(words, { readText });
    expect(code).toBe(0);
    expect(out).toMatch(/^1 +\d+ +first\.json: .* You stayed on one chord/mu);
    expect(out).toMatch(/^2 +\d+ +\+\d+ +second\.json/mu);
    const { takes, progress } = JSON.parse(
      (await runWords([...words, '--json'], { readText })).out,
    );
    expect([takes.length, progress.length]).toEqual([2, 2]);
    expect(progress[1].mended).toContain('STAYS_ON_ONE_CHORD');
  });

  test('reedplate score lays as many choruses as the take has', async () => {
    const chorus = 12 * 3840;
    const again = line.notes.map((note: { start: number }) => ({
      ...note,
      start: note.start + chorus,
    }));
    const twice = JSON.stringify({ ...line, notes: [...line.notes, ...again] });
    const { bars } = JSON.parse((await score(twice, [...WORDS, '--json'])).out);
    expect(bars).toHaveLength(24);
  });

  test.each([
    ['malformed JSON', '{"notes": [', /is not well-formed JSON/u],
    ['an empty take', '{"notes": []}', /holds no note/u],
    ['no list of notes', '{}', /a list of notes/u],
    [
      'a note before zero',
      '{"notes":[{"start":-1,"duration":1,"pitch":60}]}',
      /-1 .*notes\[0\]\.start/u,
    ],
    [
      'a pitch out of range',
      '{"notes":[{"start":0,"duration":1,"pitch":128}]}',
      /128 .*notes\[0\]\.pitch/u,
    ],
    ['an unknown field', '{"notes":[],"pickUp":0}', /"pickUp" .*did you mean pickup\?/u],
    ['a list', '[]', /an object/u],
    ['an unknown metre', '{"metre":"4/5","notes":[]}', /"4\/5" is not a metre/u],
  ])('reedplate score refuses %s in one line', async (_, text, message) => {
    const { code, out, err } = await score(text);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(message);
    expect(err).toMatch(/^reedplate: [^\n]+\n$/u);
  });
});
