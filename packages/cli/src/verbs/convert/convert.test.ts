import { readAbc, readMidi, readMusicXml, readPiece, writeMidi } from '@reedplate/interchange';
import { makeLine } from '@reedplate/line';
import { readWav } from '@reedplate/listen';
import { describe, expect, test } from 'vitest';
import { type Outcome, runWords } from '../../shared/run-words.fixture.js';

const line = makeLine(
  [67, 70, 71, 74].map((pitch, at) => ({ start: at * 960, duration: 960, pitch })),
  { title: 'Riff', tempo: 96 },
);
const ABC = 'X:1\nT:One\nM:4/4\nL:1/4\nK:G\n"G7"!trill!G _BBd|]\n\nX:2\nT:Two\nK:D\nDD\n';

/** Runs the command on one file, and keeps the one it writes. */
async function convert(
  input: string | Uint8Array,
  words: readonly string[],
): Promise<Outcome & { readonly path: string; readonly bytes: Uint8Array }> {
  const written: { path: string; bytes: Uint8Array } = { path: '', bytes: new Uint8Array() };
  const bytes = typeof input === 'string' ? new TextEncoder().encode(input) : input;
  const outcome = await runWords(words, {
    readBytes: () => bytes,
    writeBytes: (path, out) => {
      written.path = path;
      written.bytes = out;
    },
  });
  return { ...outcome, ...written };
}

const textOf = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

describe('reedplate convert', () => {
  test('reedplate convert writes a MIDI take as a sheet with chords and tab', async () => {
    const words = ['convert', 'take.mid', 'sheet.musicxml', '--harp', 'C', '--form', 'basic'];
    const { code, out, err, path, bytes } = await convert(writeMidi({ line }), [
      ...words,
      '--key',
      'G',
    ]);
    expect([code, err, path]).toEqual([0, '', 'sheet.musicxml']);
    expect(out).toBe(
      'Riff: 4 notes in 1 bar of 4/4, in G, at 96, with 12 bars of chords, as musicxml\n',
    );
    expect(readMusicXml(bytes).line).toEqual(line);
    expect(textOf(bytes)).toContain("<text>-3'</text>");
    expect(readMusicXml(bytes).chart?.spans[4]?.numeral).toBe('IV7');
  });

  test('reedplate convert reports what was left out, as text and as JSON', async () => {
    const { err, out } = await convert(ABC, ['convert', 'a.abc', 'a.mid', '--json']);
    expect(err).toMatch(
      /^reedplate: a\.abc: ornaments and playing signs are left out.*line 6, column 5\n$/u,
    );
    expect(JSON.parse(out)).toMatchObject({
      title: 'One',
      key: 'G',
      notes: 4,
      chartBars: 1,
      warnings: [{ code: 'ornaments', count: 1 }],
    });
  });

  test('reedplate convert says what the format written does not hold', async () => {
    const { err } = await convert(ABC, ['convert', 'a.abc', 'a.tab', '--harp', 'C', '--tune', '1']);
    // Tab holds the title, the key and the chords.
    expect(err.split('\n').slice(1)).toEqual(['']);
    const { err: json } = await convert(ABC, ['convert', 'a.abc', 'a.json', '--tune', '1']);
    expect(json.split('\n').slice(1, 3)).toEqual([
      'reedplate: a.json: the format holds no chords: they are not written: "lead-sheet"',
      'reedplate: a.json: the format has no place for this, which is not written: "key"',
    ]);
  });

  test('reedplate convert takes a tune by number, and lists parts', async () => {
    expect((await convert(ABC, ['convert', 'a.abc', 'a.json', '--tune', '2'])).out).toMatch(
      /^Two: 2 notes/u,
    );
    const parts = [{ name: 'Low', line: makeLine([{ start: 0, duration: 960, pitch: 40 }]) }];
    const file = writeMidi({ line, parts });
    const { out, bytes } = await convert(file, ['convert', 'a.mid', 'a.json', '--part', 'Low']);
    expect(out).toMatch(/\n2 +Low +1 note\n$/u);
    expect(readPiece(bytes).line.notes[0]?.pitch).toBe(40);
    expect((await convert(file, ['convert', 'a.mid', 'a.json', '--part', '1'])).out).toMatch(
      /^Riff: 4 notes/u,
    );
  });

  test('reedplate convert reads tab for a harp, and writes it in another dialect', async () => {
    const words = ['convert', '-', '-', '--to', 'tab', '--harp', 'C'];
    const { code, out, path, bytes } = await convert("4B:2 3D'", [
      ...words,
      '--dialect',
      'blow-draw',
    ]);
    expect([code, out, path, textOf(bytes)]).toEqual([0, '', '-', "4B:2 3D'\n"]);
    expect(textOf((await convert("4B:2 3D'", words)).bytes)).toBe("+4:2 -3'\n");
    expect((await convert('4 5', words)).err).toMatch(
      /are plain numbers blow \(plus-minus\) or draw \(plus-only\)\?/u,
    );
  });

  test('reedplate convert reads tab in the metre asked for, and its chords in the same', async () => {
    const words = ['convert', 'riff.tab', 'riff.musicxml', '--harp', 'C', '--tab-metre', '12/8'];
    const { code, err, out, bytes } = await convert('-2:2 -3:1/3 -4:5/3', [
      ...[...words, '--form', 'slow-ninths', '--key', 'G'],
    ]);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^untitled: 3 notes in 1 bar of 12\/8, in G, with 12 bars of chords/u);
    const { line: read, chart } = readMusicXml(bytes);
    expect([read.metre, chart?.metre]).toEqual(['12/8', '12/8']);
    expect(read.notes[1]).toEqual({ start: 2880, duration: 480, pitch: 71 });
  });

  test.each([
    ['-2', 'riff.tab', '5/5', /"5\/5" is not a metre/u],
    [ABC, 'a.abc', '3/4', /--tab-metre with tab alone, or the 4\/4 that the file says/u],
  ])(
    'reedplate convert refuses a metre that does not fit: %j',
    async (text, file, metre, message) => {
      const words = ['convert', file, 'out.musicxml', '--harp', 'C', '--tab-metre', metre];
      const { code, err } = await convert(text, words);
      expect(code).toBe(2);
      expect(err).toMatch(message);
      expect((await convert(ABC, ['convert', 'a.abc', 'a.mid', '--tab-metre', '4/4'])).code).toBe(
        0,
      );
    },
  );

  const take = makeLine(
    [
      { start: 7, duration: 611, pitch: 67 },
      { start: 655, duration: 288, pitch: 70 },
      { start: 951, duration: 470, pitch: 71 },
    ],
    { tempo: 96 },
  );

  test('reedplate convert lays a take on the grids asked for, each beat on the nearest', async () => {
    const words = ['convert', 'take.mid', 'take.tab', '--harp', 'C'];
    const { err, bytes } = await convert(writeMidi({ line: take }), [
      ...words,
      '--quantise',
      '1/8,1/8t',
    ]);
    expect(err).toBe('');
    expect(textOf(bytes)).toBe("## 96 beats a minute\n\n+3:2/3 -3':1/3 -3:1/2\n");
    const even = await convert(writeMidi({ line: take }), [
      ...[...words, '--quantise', '1/8', '--swing', '2'],
    ]);
    expect(textOf(even.bytes)).toMatch(/\n\+3:1\/2 -3':1\/2 -3:1\/2\n$/u);
  });

  test('reedplate convert says of a take by hand what makes it readable, where it is printed', async () => {
    const file = writeMidi({ line: take });
    const words = ['convert', 'take.mid', 'take.musicxml'];
    expect((await convert(file, words)).err).toMatch(
      /^reedplate: take\.mid: notes lie off every note value, .*--quantise 1\/8,1\/8t/u,
    );
    expect((await convert(file, [...words, '--quantise', '1/16'])).err).toBe('');
    expect((await convert(file, ['convert', 'take.mid', 'take.json'])).err).toBe('');
  });

  test.each([
    [['--quantise', '1/8T'], /did you mean 1\/8t\?/u],
    [['--quantise', ','], /LIST_EMPTY|holds nothing/u],
    [['--swing', '2'], /--quantise with --swing/u],
    [['--quantise', '1/8', '--swing', 'much'], /long to short eighth/u],
    [['--quantise', '1/8', '--swing', '9'], /ratio of eighths/u],
  ])('reedplate convert %j says in one line what is wrong', async (words, message) => {
    const { code, err } = await convert(writeMidi({ line: take }), [
      'convert',
      'a.mid',
      'a.abc',
      ...words,
    ]);
    expect(code).toBe(2);
    expect(err).toMatch(message);
    expect(err).toMatch(/^reedplate: [^\n]+\n$/u);
  });

  test.each([
    [['a.mid', 'a.pdf'], /"a\.pdf" is not in a known format.*\.json, \.mid/u],
    [['a.mid', '-'], /expected --to with it/u],
    [['a.mid', 'a.mxl'], /\.musicxml, \.abc, \.tab \(\.mxl is read, not written\)/u],
    [['a.mid', '-', '--to', 'mid'], /did you mean midi\?/u],
    [['a.mid', 'a.abc', '--from', 'abcd'], /did you mean abc\?/u],
    [['a.mid', 'a.abc', '--form', 'basic'], /expected --key with --form/u],
    [['a.mid', 'a.abc', '--tune', '0'], /number of a tune/u],
    [['a.mid', 'a.abc', '--level', 'bend'], /did you mean bends\?/u],
    [['a.mid', 'a.abc', '--part', '7'], /number or name of a part/u],
    [['a.mid', 'a.tab'], /a harp besides/u],
    [['a.mid'], /missing required argument 'out'/u],
  ])('reedplate convert %j says in one line what is wrong', async (words, message) => {
    const { code, out, err } = await convert(writeMidi({ line }), ['convert', ...words]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(message);
    expect(err).toMatch(/^reedplate: [^\n]+\n$/u);
  });

  test('reedplate convert names the file that cannot be read', async () => {
    expect((await convert('MThd', ['convert', 'bad.mid', 'a.abc', '--from', 'midi'])).err).toMatch(
      /is not a well-formed MIDI file .*file bad\.mid/u,
    );
  });
});

describe('reedplate backing', () => {
  const WORDS = ['backing', '--form', 'quick-change', '--key', 'G', '--choruses', '2', '-o'];

  test('reedplate backing writes a band as a MIDI file, and says how long it plays', async () => {
    const { code, out, err, bytes } = await convert('', [...WORDS, 'band.mid', '--tempo', '120']);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^Quick-change twelve-bar in G, 4\/4, shuffle, at 120\n/u);
    expect(out).toContain('\n2 choruses, 26 bars, 0:52: Bass, Comping, Drums\n');
    expect(out).toContain('Keep the volume low');
    const { parts, chart, line: read } = readMidi(bytes);
    expect(parts.map(({ name }) => name)).toEqual(['Bass', 'Comping', 'Drums']);
    expect([chart?.bars, read.tempo, read.countIn]).toEqual([25, 120, 1]);
  });

  test('reedplate backing plays a line on top, and takes feel, count-in and ending', async () => {
    const words = [...WORDS, 'band.abc', '--line', 'riff.abc', '--feel', 'straight'];
    const { out, bytes, err } = await convert(ABC, [
      ...words,
      '--count-in',
      '2',
      '--no-final-bar',
      '--json',
    ]);
    expect(err).toMatch(/ornaments/u);
    expect(JSON.parse(out)).toMatchObject({ feel: 'straight', bars: 26, tempo: 96, seconds: 65 });
    expect(readAbc(bytes)[0]?.line.notes[0]).toEqual({ start: 2 * 3840, duration: 960, pitch: 67 });
  });

  test('reedplate backing goes on in another key and up a ladder, and a take over it needs no option', async () => {
    const words = [
      '--key-change',
      '1:2',
      '--ladder',
      '8',
      '--swing',
      'by-tempo',
      '--looseness',
      '10',
    ];
    const { code, bytes } = await convert('', [...WORDS, 'band.mid', '--tempo', '120', ...words]);
    expect(code).toBe(0);
    const { chart, line: read } = readMidi(bytes);
    expect(chart?.spans.find(({ bar }) => bar === 13)?.chord?.symbol).toBe('A7');
    expect(read.tempoChanges?.map(({ tempo }) => Math.round(tempo))).toEqual([128]);
    const song = ['--form', 'quick-change', '--key', 'G'];
    const riff = await convert(ABC, [
      'backing',
      ...song,
      '--choruses',
      '1',
      '--line',
      'a.abc',
      '-o',
      'b.mid',
    ]);
    const alone = await convert(ABC, ['score', 'a.abc', ...song, '--json']);
    const over = await convert(riff.bytes, ['score', 'b.mid', ...song, '--json']);
    expect(JSON.parse(over.out).alignment.countIn).toBe(1);
    expect(Math.abs(JSON.parse(over.out).total - JSON.parse(alone.out).total)).toBeLessThan(1);
  });

  test('reedplate backing writes a band as sound, with a click where asked', async () => {
    const words = [...WORDS, 'band.wav', '--tempo', '240'];
    const { code, out, err, bytes } = await convert('', words);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('Keep the volume low');
    const { samples, sampleRate } = readWav(bytes);
    // 26 bars of a second each, and 2 seconds in which the last of them rings.
    expect(samples.length / sampleRate).toBeCloseTo(28, 0);
    const peak = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
    expect(peak).toBeGreaterThan(0.2);
    expect(peak).toBeLessThanOrEqual(0.801);
    const clicked = await convert('', [...words, '--click']);
    expect(clicked.bytes).not.toEqual(bytes);
    expect(clicked.bytes.length).toBe(bytes.length);
  });

  test.each([
    [
      ['band'],
      /expected a name that ends in \.mid, \.musicxml, \.abc or \.wav, which hold a band/u,
    ],
    [['band.mid', '--swing', 'wide'], /a long to a short eighth, 1 to 4, or by-tempo/u],
    [['band.mid', '--key-change', 'up'], /choruses and semitones, as 2:5/u],
    [['band.mid', '--ladder', '99'], /beats a minute/u],
    [['band.mid', '--click'], /--click with \.wav alone/u],
    [['band.wav', '--choruses', '100'], /30 minutes at most/u],
    [['band'], /which hold a band/u],
    [['band.MXL'], /\.mxl is read, not written/u],
    [['band.json'], /\.mid, \.musicxml, \.abc or \.wav, which hold a band/u],
    [['band.tab'], /which hold a band/u],
    [['band.mid', '--tempo', 'fast'], /felt beats a minute/u],
    [['band.mid', '--feel', 'shufle'], /did you mean shuffle\?/u],
    [['band.mid', '--choruses', '0'], /choruses/u],
    [['band.mid', '--count-in', '9'], /bars counted in/u],
  ])('reedplate backing %j says in one line what is wrong', async (words, message) => {
    const { code, err } = await convert('', [...WORDS, ...words]);
    expect(code).toBe(2);
    expect(err).toMatch(message);
  });
});
