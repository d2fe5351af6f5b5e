import { type Chart, FORMS, makeForm } from '@reedplate/form';
import { describe, expect, test } from 'vitest';
import { runWords } from '../../shared/run-words.fixture.js';

const withFile = (text: string) => ({ readText: () => text });
const BASIC = 'G7 | % | % | % | C7 | % | G7 | % | D7 | C7 | G7 | D7';

describe('reedplate forms', () => {
  test('forms lists forms, turnarounds and endings', async () => {
    const { out, code } = await runWords(['forms']);
    expect(code).toBe(0);
    expect(out).toContain(`forms (${FORMS.length})`);
    expect(out).toMatch(/^quick-change +12 bars +4\/4 +shuffle +The basic twelve bars/mu);
    expect(out).toMatch(/^one-six-two-five +\| I7 VI7 \| ii7 V7 \|/mu);
    expect(out).toMatch(/^half-step-above +\| I7 \| bII7 I7 \|/mu);
  });

  test('forms narrows by bars and mode', async () => {
    const { out } = await runWords(['forms', '--bars', '12', '--mode', 'minor', '--json']);
    const forms = JSON.parse(out);
    expect(forms).toEqual(
      JSON.parse(
        JSON.stringify(FORMS.filter(({ bars, mode }) => bars.length === 12 && mode === 'minor')),
      ),
    );
    expect(forms.length).toBeGreaterThan(4);
  });

  test.each(['turnarounds', 'endings'])(
    'forms --%s gives these, of a mode if asked',
    async (kind) => {
      const words = ['forms', `--${kind}`, '--mode', 'minor'];
      const closings = JSON.parse((await runWords([...words, '--json'])).out);
      expect(closings.length).toBeGreaterThan(2);
      for (const { mode, bars } of closings) expect([mode, bars.length]).toEqual(['minor', 2]);
      expect((await runWords(words)).out).toMatch(
        new RegExp(`^${kind} \\(${closings.length}\\)\n`, 'u'),
      );
    },
  );

  test('forms --bars prints forms alone', async () => {
    const { out } = await runWords(['forms', '--bars', '8']);
    expect(out).toMatch(/^forms \(\d+\)\n/u);
    expect(out).not.toMatch(/turnarounds|endings/u);
  });

  test('forms says that there is none of a length', async () => {
    expect((await runWords(['forms', '--bars', '7'])).out).toMatch(/^forms \(0\)\nnone\n/u);
  });

  test('forms ID shows the bars, use and source of one', async () => {
    const { out } = await runWords(['forms', 'minor-flat-six']);
    expect(out).toContain('slow 12/8\n| i7   | %  | %  | %  |');
    expect(out).toMatch(/^source: Premier Guitar/mu);
  });

  test.each([
    [['forms', 'quick-chnage'], /did you mean quick-change\?/u],
    [['forms', 'basic', '--endings'], /--turnarounds or --endings alone/u],
    [['forms', '--turnarounds', '--endings'], /--turnarounds or --endings alone/u],
    [['forms', '--bars', 'twelve'], /"twelve" .*bars/u],
    [['forms', '--mode', 'minro'], /did you mean minor\?/u],
  ])('%j is refused in one line', async (words, message) => {
    const { code, err } = await runWords(words);
    expect(code).toBe(2);
    expect(err).toMatch(message);
  });
});

describe('reedplate recognise', () => {
  test('recognise names the form and says that all bars agree', async () => {
    const { out, code } = await runWords(['recognise', BASIC]);
    expect(code).toBe(0);
    expect(out).toMatch(/^Basic twelve-bar in G, bar for bar\nconfidence 1\.00/u);
  });

  test('recognise shows what differs, bar by bar, extra and missing bars too', async () => {
    const other = (
      await runWords(['recognise', BASIC.replace('% | % | %', '% | Ab7 | G7'), '--key', 'G'])
    ).out;
    expect(other).toMatch(/^nearest to Basic twelve-bar in G: 92 % of the bars agree$/mu);
    expect(other).toMatch(/^3 +Ab7 +G7 +1\.00 +another chord$/mu);
    const extra = (await runWords(['recognise', BASIC.replace('G7 | %', 'G7 | Ab7 | %')])).out;
    expect(extra).toMatch(/^2 +Ab7 +\(none\) +1\.00 +a bar too many$/mu);
    const missing = (await runWords(['recognise', BASIC.replace('% | % | %', '% | %')])).out;
    expect(missing).toMatch(/^\(\d+\) +\(none\) +\S+ +1\.00 +a bar left out$/mu);
  });

  test('recognise calls a tie a tie', async () => {
    const played = 'C7 | C7 F7 | C7 | % | F7 | % | C7 | % | G7 | F7 | C7 | G7';
    const { out } = await runWords(['recognise', played]);
    expect(out).toMatch(
      /^a tie of 2: Basic twelve-bar in C, Quick-change twelve-bar in C\nconfidence 0\.00/u,
    );
  });

  test('recognise reads a file, or standard input for -', async () => {
    const { out } = await runWords(['recognise', 'tune.txt', '--json'], withFile(BASIC));
    expect(JSON.parse(out)).toMatchObject({
      tie: false,
      confidence: 1,
      best: [{ form: 'basic', key: 'G', cost: 0, differences: [] }],
    });
  });

  test.each([
    [['recognise', 'G7 | H7'], /"H7" cannot stand here .*bar 2, line 1, column 6/u],
    [['recognise', 'N.C. | N.C.'], /at least one chord/u],
    [['recognise', 'nothing'], /"nothing" cannot stand here/u],
    [['recognise', ''], /at least one bar/u],
    [['recognise', BASIC, '--key', 'H'], /did you mean B\?/u],
    [['recognise'], /missing required argument 'bars'/u],
  ])('%j is refused in one line', async (words, message) => {
    const { code, out, err } = await runWords(words);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(message);
    expect(err).toMatch(/^reedplate: [^\n]+\n$/u);
  });
});

describe('reedplate chart', () => {
  const firstChords = async (words: readonly string[], parts = {}) => {
    const { out } = await runWords(['chart', ...words, '--json'], parts);
    const { bars, spans }: Chart = JSON.parse(out);
    return Array.from({ length: bars }, (_, index) =>
      spans
        .filter(({ bar }) => bar === index + 1)
        .map(({ chord }) => chord?.symbol ?? 'N.C.')
        .join(' '),
    );
  };

  test('chart reads bars of numerals, or of chord names', async () => {
    expect(await firstChords(['--key', 'G', '--form', '| I7 | IV7 V7 |'])).toEqual(['G7', 'C7 D7']);
    expect(await firstChords(['--key', 'G', '--form', '|: G7 :| C7'])).toEqual(['G7', 'G7', 'C7']);
  });

  test('chart reads a file of bars or of JSON', async () => {
    const form = makeForm([[{ numeral: 'bVI7', weight: 1 }]]);
    const words = ['--key', 'C', '--form', './ours.form'];
    expect(await firstChords(words, withFile(JSON.stringify(form)))).toEqual(['Ab7']);
    expect(await firstChords(words, withFile('I7 |\n| V7'))).toEqual(['C7', 'G7']);
  });

  test('chart says where in a file it cannot go on', async () => {
    const { code, err } = await runWords(
      ['chart', '--key', 'C', '--form', 'ours.txt'],
      withFile('| I7 |\n| IX7 |'),
    );
    expect(code).toBe(2);
    expect(err).toMatch(/"IX7" .*bar 2, line 2, column 3, file ours\.txt/u);
  });

  test('chart applies variations in order, then the turnaround', async () => {
    const words = ['--key', 'Eb', '--vary', 'quick-change, two-five'];
    expect(await firstChords([...words, '--turnaround', 'one-six-two-five'])).toEqual(
      'Eb7,Ab7,Eb7,Eb7,Ab7,Ab7,Eb7,Eb7,Fm7,Bb7,Eb7 C7,Fm7 Bb7'.split(','),
    );
  });

  test('chart plans introduction, choruses and ending, each on a line of its own', async () => {
    const words = ['chart', '--key', 'A', '--choruses', '2', '--intro', 'from-the-turnaround'];
    const { out } = await runWords([...words, '--ending', 'five-one', '--metre', '12/8']);
    expect(out).toMatch(
      /^Basic twelve-bar in A, 12\/8, shuffle\n\nintroduction\n1 +\| I7 +\| V7\n/u,
    );
    expect(out).toMatch(/\nchorus 1\n3 /u);
    expect(out).toMatch(/\nchorus 2\n15 /u);
    expect(out.trimEnd()).toMatch(/\| E7 A7$/u);
  });

  test('chart writes the beats of chords that share a bar unevenly', async () => {
    const { out } = await runWords(['chart', '--key', 'C', '--form', 'I7 / / V7 | I7 V7']);
    expect(out).toMatch(/\| I7 \/ \/ V7 +\| I7 V7\n +\| C7 \/ \/ G7 +\| C7 G7/u);
  });

  test('chart reads slow as the feel of twelve slow eighths', async () => {
    const words = ['chart', '--key', 'G', '--json', '--feel'];
    expect((await runWords([...words, 'slow'])).out).toBe(
      (await runWords([...words, 'slow-12/8'])).out,
    );
  });

  test('chart takes a minor form for a minor key', async () => {
    expect(await firstChords(['--key', 'Am', '--form', 'vamp'])).toEqual([
      'Am7',
      'Am7',
      'Am7',
      'Am7',
    ]);
  });

  test.each([
    [['--form', 'I7 | % % '], /"%" cannot stand here/u],
    [['--vary', 'quick-chnage'], /did you mean quick-change\?/u],
    [['--turnaround', 'two-fiv'], /did you mean two-five\?/u],
    [['--ending', 'minor-one'], /did you mean one\?/u],
    [['--intro', 'from-the-fiev'], /did you mean from-the-five\?/u],
    [['--choruses', '0'], /1 to 1000/u],
    [['--metre', '4/5'], /is not a metre/u],
    [['--feel', 'shufle'], /did you mean shuffle\?/u],
  ])('chart %j is refused in one line', async (words, message) => {
    const { code, out, err } = await runWords(['chart', '--key', 'G', ...words]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(message);
  });
});
