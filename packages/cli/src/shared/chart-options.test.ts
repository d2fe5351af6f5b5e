import { makeChart, withTurnaround } from '@reedplate/form';
import { makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { type ChartForLineWords, readChartFor } from './chart-for-line.js';
import { runWords } from './run-words.fixture.js';

const BAR = 3840;
const takeOf = (bars: number, metre = '4/4' as const) =>
  makeLine(
    Array.from({ length: bars }, (_, bar) => ({ start: bar * BAR, duration: BAR, pitch: 67 })),
    { metre },
  );
const FILES: ReadonlyMap<string, string> = new Map([
  ['take.json', JSON.stringify(takeOf(12))],
  ['long.json', JSON.stringify(takeOf(26))],
  ['song.txt', '| G7 | C7 | D7 | G7 |'],
]);

async function run(...words: readonly string[]) {
  const written: Uint8Array[] = [];
  const outcome = await runWords(words, {
    readText: (path) => FILES.get(path) ?? '',
    writeBytes: (_, bytes) => void written.push(bytes),
  });
  return { ...outcome, written: new TextDecoder().decode(written[0]) };
}

async function json(...words: readonly string[]) {
  const { out, err } = await run(...words, '--json');
  expect(err).toBe('');
  return JSON.parse(out);
}

const HARP = ['--harp', 'C'] as const;

/** Verbs that plan a chart, each with what reads the bars and the last chord from its report. */
const PLANNING: readonly (readonly [string, readonly string[], (report: Json) => number])[] = [
  ['chart', [], ({ bars }) => bars],
  ['target', HARP, (chords) => Math.max(...chords.flatMap(({ bars }: Json) => bars))],
  ['practice', HARP, ({ steps }) => steps.at(-1).bar],
  ['backing', ['-o', 'band.mid', '--no-final-bar', '--count-in', '0'], ({ bars }) => bars],
];

/** Reports of many verbs, as they are parsed. */
type Json = ReturnType<typeof JSON.parse>;

describe.each(PLANNING)('reedplate %s', (verb, words, barsOf) => {
  const plan = (...more: readonly string[]) => json(verb, '--key', 'G', ...words, ...more);

  test('plays the form as often as --choruses says', async () => {
    expect(barsOf(await plan('--choruses', '2'))).toBe(24);
    expect(barsOf(await plan('--choruses', '3', '--form', 'I7 | IV7 | V7 | I7'))).toBe(12);
  });

  test('adds the bars of --intro', async () => {
    expect(barsOf(await plan('--choruses', '1', '--intro', 'from-the-five'))).toBe(16);
  });

  test('applies --vary before --turnaround', async () => {
    const bars = barsOf(
      await plan('--choruses', '1', '--vary', 'double-length', '--turnaround', 'one-four-one-five'),
    );
    expect(bars).toBe(24);
  });

  test.each([
    [['--vary', 'quick-chnage'], 'did you mean quick-change?'],
    [['--vary', ','], 'at least one word'],
    [['--turnaround', 'two-fiv'], 'did you mean two-five?'],
    [['--intro', 'from-the-fiev'], 'did you mean from-the-five?'],
    [['--form', '12-bar'], 'did you mean basic?'],
    [['--ending', 'five-noe'], 'did you mean five-one?'],
    [['--metre', '4/5'], 'is not a metre'],
    [['--feel', 'shufle'], 'did you mean shuffle?'],
    [['--choruses', 'two'], 'choruses'],
  ])('refuses %j in one line', async (wrong, message) => {
    const { code, out, err } = await run(verb, '--key', 'G', ...words, ...wrong);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(message);
  });
});

describe('readChart', () => {
  const chart = (...words: readonly string[]) => json('chart', ...words);

  test('readChart gives what makeChart gives for the same plan', async () => {
    const form = withTurnaround('quick-change', 'two-five');
    const options = { choruses: 2, metre: '12/8', intro: 'from-the-turnaround' } as const;
    const words = '--key Eb --form basic --vary quick-change --turnaround two-five --choruses 2';
    const { form: _, ...made } = makeChart(form, 'Eb', { ...options, ending: 'five-one' });
    expect(
      await chart(
        ...words.split(' '),
        ...'--metre 12/8 --intro from-the-turnaround --ending five-one'.split(' '),
      ),
    ).toMatchObject(made);
  });

  test('readChart makes a minor form of a major one for a minor key, and varies that', async () => {
    const { spans } = await chart('--key', 'Am', '--vary', 'triads');
    expect(spans[0].chord.symbol).toBe('Am');
  });

  test('readChart turns a major key minor where --vary says so', async () => {
    expect((await chart('--key', 'A', '--vary', 'minor')).key).toBe('Am');
  });
});

describe('readChartFor', () => {
  const score = (...words: readonly string[]) => json('score', ...words, '--key', 'G');
  const barsFor = (bars: number, words: Partial<ChartForLineWords> = {}) =>
    readChartFor(takeOf(bars), { form: 'basic', key: 'G', ...words }, { readText: () => '' }).bars;

  test('readChartFor lays as many choruses as the take needs', () => {
    expect([barsFor(12), barsFor(26)]).toEqual([12, 36]);
  });

  test('readChartFor counts the bars of an introduction apart', () => {
    expect(barsFor(26, { intro: 'from-the-turnaround' })).toBe(26);
  });

  test('readChartFor takes --vary, --turnaround and --ending', async () => {
    const words = ['--vary', 'triads', '--turnaround', 'late-five', '--ending', 'one'];
    const { bars } = await score('take.json', ...words);
    expect(bars[0].chords).toEqual(['G']);
    expect(bars[11].chords).not.toEqual((await score('take.json')).bars[11].chords);
  });

  test('convert writes the varied chords over the line', async () => {
    const words = ['convert', 'take.json', 'sheet.abc', '--key', 'G', '--form', 'basic'];
    expect((await run(...words, '--vary', 'ninths')).written).toContain('"G9"');
    expect((await run(...words)).written).not.toContain('"G9"');
  });

  test('score takes neither --choruses nor --metre: the take has its own', async () => {
    for (const option of ['--choruses', '--metre']) {
      const { code, err } = await run('score', 'take.json', '--key', 'G', option, '2');
      expect(code).toBe(2);
      expect(err).toContain(`unknown option '${option}'`);
    }
  });
});

describe('set and pick', () => {
  const weights = async (...words: readonly string[]) =>
    (await json(...words)).map(({ weight }: { weight: number }) => weight);

  test.each([[], ['--form', 'minor-flat-six'], ['--vary', 'triads'], ['--form', 'song.txt']])(
    'set gives a song of one key the harp and the weight that pick gives it with %j',
    async (...words) => {
      const [best] = await json('pick', '--key', 'G', ...words);
      const [step] = (await json('setlist', 'G', ...words)).steps;
      expect(step.pick).toEqual(best);
    },
  );

  test('set reads a form of chord names in the key of its first song, for all', async () => {
    const { steps } = await json('setlist', 'G', 'A', '--form', 'song.txt', '--least', '1');
    expect(steps.map(({ pick }: Json) => pick.position)).toEqual([2, 2]);
    expect(steps[0].pick.weight).toBe(steps[1].pick.weight);
  });

  test('pick weighs the chords of the varied form', async () => {
    expect(await weights('pick', '--key', 'G', '--vary', 'triads')).not.toEqual(
      await weights('pick', '--key', 'G'),
    );
  });
});
