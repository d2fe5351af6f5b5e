import { zipSync } from 'fflate';
import { describe, expect, test, vi } from 'vitest';
import type { ReadNotationOptions } from '../notation/assemble-piece.js';
import type { Piece } from '../piece.js';
import { readMusicXml } from './read-musicxml.js';

// A busy machine takes its time over 17 MB.
vi.setConfig({ testTimeout: 60_000 });

const HEAD =
  '<attributes><divisions>2</divisions><time><beats>4</beats><beat-type>4</beat-type></time></attributes>';
const LIST = '<part-list><score-part id="P1"><part-name>Tune</part-name></score-part></part-list>';

const score = (...measures: readonly string[]): string =>
  `<score-partwise version="4.0">${LIST}<part id="P1">${measures
    .map((inside, at) => `<measure number="${at + 1}">${at === 0 ? HEAD : ''}${inside}</measure>`)
    .join('')}</part></score-partwise>`;
const note = (step: string, duration = 2, more = ''): string => {
  const pitch = `<pitch><step>${step[0]}</step>${step[2] === undefined ? '' : `<alter>${step.slice(2)}</alter>`}<octave>${step[1]}</octave></pitch>`;
  return `<note>${pitch}<duration>${duration}</duration>${more}</note>`;
};
const read = (measures: readonly string[], options: ReadNotationOptions = {}): Piece =>
  readMusicXml(score(...measures), options);
const notes = ({ line }: Pick<Piece, 'line'>): readonly string[] =>
  line.notes.map(({ start, duration, pitch }) => `${start}+${duration} ${pitch}`);
const codes = ({ warnings }: Piece): readonly string[] => warnings.map(({ code }) => code);
const repeat = (direction: string, more = ''): string =>
  `<barline><repeat direction="${direction}" ${more}/></barline>`;
const ending = (number: string, type: string): string =>
  `<barline><ending number="${number}" type="${type}"/></barline>`;

describe('readMusicXml, notes', () => {
  test('readMusicXml reads pitches with alterations, in divisions of the quarter', () => {
    expect(notes(read([note('C4') + note('F4+1', 1) + note('B4-1', 3) + note('C5', 2)]))).toEqual([
      '0+960 60',
      '960+480 66',
      '1440+1440 70',
      '2880+960 72',
    ]);
  });

  test('readMusicXml reads chords, rests, and voices by backup and forward', () => {
    const chord = note('E4', 4).replace('<pitch>', '<chord/><pitch>');
    const rest = '<note><rest/><duration>2</duration></note>';
    const back = '<backup><duration>8</duration></backup>';
    const forward = '<forward><duration>2</duration></forward>';
    const bar = note('C4', 4) + chord + rest + note('D4') + back + forward + note('G3', 6);
    expect(notes(read([bar]))).toEqual(['0+1920 60', '0+1920 64', '960+2880 55', '2880+960 62']);
  });

  test('readMusicXml joins tied notes over bar lines', () => {
    const [start, both, stop] = ['start', 'both', 'stop'].map((kind) =>
      ['stop', 'start']
        .filter((type) => kind === 'both' || kind === type)
        .map((type) => `<tie type="${type}"/>`)
        .join(''),
    );
    const piece = read([note('G4', 8, start), note('G4', 8, both), note('G4', 8, stop)]);
    expect([notes(piece), piece.warnings]).toEqual([['0+11520 67'], []]);
  });

  test('readMusicXml sounds transposing instruments as they sound', () => {
    const transpose =
      '<attributes><transpose><chromatic>-2</chromatic><octave-change>-1</octave-change></transpose></attributes>';
    expect(notes(read([transpose + note('C4')]))).toEqual(['0+960 46']);
  });

  test('readMusicXml makes a part of each staff', () => {
    const low = note('C3', 8, '<staff>2</staff>');
    const back = '<backup><duration>8</duration></backup>';
    const piece = read([note('C5', 8, '<staff>1</staff>') + back + low]);
    expect(piece.parts.map(({ name, line }) => [name, line.notes[0]?.pitch])).toEqual([
      ['Tune (staff 1)', 72],
      ['Tune (staff 2)', 48],
    ]);
    expect(read([note('C5', 8) + back + low], { part: 2 }).line.notes[0]?.pitch).toBe(48);
    expect(() => read([note('C5')], { part: 2 })).toThrowError(/1 \(Tune\)/u);
  });
});

describe('readMusicXml, bars', () => {
  const letters = (measures: readonly string[], options = {}): string =>
    read(measures, options)
      .line.notes.map(({ pitch }) => 'C D EF G A B'.charAt(pitch - 60))
      .join('');
  const [c, d, e, f] = ['C4', 'D4', 'E4', 'F4'].map((step) => note(step, 8)) as [
    string,
    string,
    string,
    string,
  ];

  test('readMusicXml plays repeats, with their times and endings', () => {
    expect(letters([c, d + repeat('backward'), e])).toBe('CDCDE');
    expect(letters([c, repeat('forward') + d + repeat('backward', 'times="3"'), e])).toBe('CDDDE');
    const first = ending('1', 'start') + d + ending('1', 'stop') + repeat('backward');
    const second = ending('2', 'start') + e + ending('2', 'discontinue');
    expect(letters([repeat('forward') + c, first, second, f])).toBe('CDCEF');
    expect(letters([repeat('forward') + c, first, second, f], { repeats: false })).toBe('CDEF');
  });

  test('readMusicXml carries an ending over several measures', () => {
    const opens = ending('1', 'start') + d;
    const closes = e + ending('1', 'stop') + repeat('backward');
    expect(letters([c, opens, closes, ending('2', 'start') + f])).toBe('CDECF');
  });

  test('readMusicXml reads a short first measure as a pickup', () => {
    const { line, warnings } = read([note('G4'), note('C4', 8)]);
    expect([line.pickup, warnings]).toEqual([960, []]);
  });

  test('readMusicXml warns of jumps that are not clear, and of metres and keys that change', () => {
    const change =
      '<attributes><key><fifths>1</fifths></key><time><beats>3</beats><beat-type>4</beat-type></time></attributes>';
    const jump = '<direction><sound dalsegno="nowhere"/></direction>';
    expect([...codes(read([c, change + note('C4', 6) + jump]))].sort()).toEqual([
      'key-change',
      'metre-change',
      'repeat-jump',
    ]);
  });
});

describe('readMusicXml, heads', () => {
  test('readMusicXml reads title, key, metre, tempo, swing and program', () => {
    const xml = score(note('C4'))
      .replace(
        '<part-list>',
        '<work><work-title>Riff &amp; <![CDATA[roll]]></work-title></work><part-list>',
      )
      .replace(
        '</part-name>',
        '</part-name><midi-instrument id="I"><midi-program>23</midi-program></midi-instrument>',
      )
      .replace('<time><beats>4', '<key><fifths>-2</fifths><mode>minor</mode></key><time><beats>3+2')
      .replace(
        '<note>',
        '<sound tempo="90"><swing><first>2</first><second>1</second></swing></sound><harmony><root><root-step>G</root-step></root><kind>minor</kind></harmony><note>',
      );
    const piece = readMusicXml(xml);
    expect(piece.line).toMatchObject({ title: 'Riff & roll', metre: '5/4', tempo: 90 });
    expect([piece.key, piece.parts[0]?.program, piece.chart?.feel]).toEqual(['Gm', 23, 'shuffle']);
  });

  test.each([
    ['major', 0, 'C'],
    ['dorian', 0, 'Dm'],
    ['phrygian', 0, 'Em'],
    ['lydian', 0, 'F'],
    ['mixolydian', 0, 'G'],
    ['aeolian', 0, 'Am'],
    ['', 2, 'D'],
    ['major', 9, undefined],
  ])('readMusicXml names the key of mode %j with %i sharps %s', (mode, fifths, name) => {
    const key = `<key><fifths>${fifths}</fifths><mode>${mode}</mode></key>`;
    expect(readMusicXml(score(note('C4')).replace('<time>', `${key}<time>`)).key).toBe(name);
  });

  test('readMusicXml counts in 4/4 where no metre is kept, and says so', () => {
    const without = score(note('C4')).replace(/<time>.*<\/time>/u, '');
    expect(codes(readMusicXml(without))).toEqual(['metre-missing']);
    expect(codes(readMusicXml(score(note('C4')).replace('<beats>4', '<beats>x')))).toEqual([
      'field-unknown',
    ]);
  });
});

describe('readMusicXml, chord symbols', () => {
  const symbolOf = (harmony: string): string | undefined =>
    read([`<harmony>${harmony}</harmony>${note('C4', 8)}`]).chart?.spans[0]?.chord?.symbol;
  const root = '<root><root-step>B</root-step><root-alter>-1</root-alter></root>';

  test.each([
    [`${root}<kind>dominant</kind>`, 'Bb7'],
    [`${root}<kind text="7">dominant</kind><bass><bass-step>D</bass-step></bass>`, 'Bb7/D'],
    [`${root}<kind>half-diminished</kind>`, 'Bbm7b5'],
    [`${root}<kind text="7#9">other</kind>`, 'Bb7#9'],
    [
      `${root}<kind>dominant</kind><degree><degree-value>9</degree-value><degree-alter>-1</degree-alter><degree-type>add</degree-type></degree>`,
      'Bb7b9',
    ],
    [
      `${root}<kind>major</kind><degree><degree-value>9</degree-value><degree-alter>0</degree-alter><degree-type>add</degree-type></degree>`,
      'Bbadd9',
    ],
    [`${root}<kind>none</kind>`, undefined],
  ])('readMusicXml of %s shows %s', (harmony, symbol) => {
    expect(symbolOf(harmony)).toBe(symbol);
  });

  test('readMusicXml places chord symbols, with their offset, in bars', () => {
    const g = '<harmony><root><root-step>G</root-step></root><kind>dominant</kind></harmony>';
    const c = g.replace('>G<', '>C<').replace('</harmony>', '<offset>4</offset></harmony>');
    const piece = read([g + c + note('C4', 8), note('C4', 8)]);
    const spans = piece.chart?.spans.map(
      ({ bar, beat, chord }) => `${bar}:${beat} ${chord?.symbol}`,
    );
    expect(spans).toEqual(['1:1 G7', '1:3 C7', '2:1 C7']);
  });
});

describe('readMusicXml, what is left out', () => {
  test.each([
    [note('C4', 2, '<notations><ornaments><trill-mark/></ornaments></notations>'), 'ornaments', 2],
    [
      note('C4', 2, '<notations><articulations><staccato/></articulations></notations>'),
      'ornaments',
      2,
    ],
    [note('C4', 2, '<notations><fermata/></notations>'), 'ornaments', 2],
    [note('C4').replace('<pitch>', '<cue/><pitch>'), 'cue-notes', 1],
    [note('C4', 2, '<lyric><text>la</text></lyric>'), 'words', 2],
    ['<note><unpitched/><duration>2</duration></note>', 'percussion', 1],
    [note('C99'), 'pitch-range', 1],
    [note('C4', 0), 'note-empty', 1],
  ])('readMusicXml of %s warns of %s', (odd, code, count) => {
    const piece = read([odd + note('D4')]);
    expect([codes(piece), piece.line.notes.length]).toEqual([[code], count]);
    expect(piece.warnings[0]?.where).toEqual({ bar: 1 });
  });

  test('readMusicXml says which playing sign it left out first, and takes ties and tab for none', () => {
    const signs = '<articulations><accent/><tenuto/></articulations>';
    const played = read([note('C4', 2, `<notations>${signs}</notations>`) + note('D4')]);
    expect(played.warnings[0]?.value).toBe('tenuto');
    expect(read([note('C4', 2, '<notations><fermata/></notations>')]).warnings[0]?.value).toBe(
      'fermata',
    );
    const tab =
      '<notations><technical><other-technical>-2</other-technical></technical></notations>';
    expect(codes(read([note('C4', 2, tab) + note('D4')]))).toEqual([]);
  });

  test('readMusicXml leaves out cue notes, which another part plays, and not their time', () => {
    const piece = read([note('C4').replace('<pitch>', '<cue/><pitch>') + note('D4')]);
    expect(piece.line.notes.map(({ start }) => start)).toEqual([960]);
  });

  test('readMusicXml keeps tempos that change, where they stand', () => {
    const piece = read([
      `<sound tempo="60"/>${note('C4')}<sound tempo="90"/>${note('D4', 6)}`,
      `<direction><offset>2</offset><sound tempo="90"/></direction>${note('E4', 4)}<sound tempo="30"/>`,
    ]);
    expect([piece.line.tempo, codes(piece)]).toEqual([60, []]);
    expect(piece.line.tempoChanges).toEqual([
      { start: 960, tempo: 90 },
      { start: 3840 + 1920, tempo: 30 },
    ]);
  });
});

describe('readMusicXml, files', () => {
  const xml = `<?xml version="1.0"?>${score(note('C4'))}`;
  const bytes = new TextEncoder().encode(xml);
  const container = (path: string): Uint8Array =>
    new TextEncoder().encode(
      `<container><rootfiles><rootfile full-path="${path}"/></rootfiles></container>`,
    );

  test('readMusicXml reads UTF-8 and UTF-16, with and without a byte order mark', () => {
    const wide = (text: string) => new Uint8Array(Buffer.from(text, 'utf16le'));
    const swapped = (from: Uint8Array) => from.map((_, at) => from[at ^ 1] ?? 0);
    for (const file of [
      bytes,
      wide(`\uFEFF${xml}`),
      swapped(wide(`\uFEFF${xml}`)),
      wide(xml),
      swapped(wide(xml)),
    ]) {
      expect(notes(readMusicXml(file))).toEqual(['0+960 60']);
    }
  });

  test('readMusicXml reads timewise scores', () => {
    const measures = ['C4', 'D4'].map(
      (step, at) =>
        `<measure><part id="P1">${at === 0 ? HEAD : ''}${note(step, 8)}</part></measure>`,
    );
    const timewise = `<score-timewise>${LIST}${measures.join('')}</score-timewise>`;
    expect(notes(readMusicXml(timewise))).toEqual(['0+3840 60', '3840+3840 62']);
  });

  test('readMusicXml reads compressed files, stored or deflated', () => {
    for (const level of [0, 9] as const) {
      const files = { 'other.xml': new Uint8Array(3), 'in/score.musicxml': bytes };
      const mxl = zipSync(
        { 'META-INF/container.xml': container('in/score.musicxml'), ...files },
        { level },
      );
      expect(notes(readMusicXml(mxl))).toEqual(['0+960 60']);
    }
  });

  test.each([
    ['is missing', {}],
    ['is ill-formed', { 'META-INF/container.xml': new TextEncoder().encode('<container><rootf') }],
    ['names what is not there', { 'META-INF/container.xml': container('gone.xml') }],
    ['is empty', { 'META-INF/container.xml': new Uint8Array() }],
  ])('readMusicXml finds the score in a compressed file whose container %s', (_, files) => {
    expect(notes(readMusicXml(zipSync({ ...files, 'score.xml': bytes })))).toEqual(['0+960 60']);
  });

  test.each([
    ['tags that do not close', '<rootfile '],
    ['attributes without a value', '<rootfile full-path'],
    ['a name and spaces', '<rootfile full-path   \n  '],
    ['prefixes', '<a'],
    ['one tag of many attributes', ' full-path= '],
  ])('readMusicXml reads a container of 300 kB of %s in the time of its size', (_, part) => {
    const text = `<rootfile ${part.repeat(300_000 / part.length)}`;
    const files = { 'META-INF/container.xml': new TextEncoder().encode(text), 'score.xml': bytes };
    expect(notes(readMusicXml(zipSync(files)))).toEqual(['0+960 60']);
  });

  test('readMusicXml takes the first path that a container names, whatever stands around it', () => {
    const text = `<container><rootfile media-type="x"><c:rootfile full-path = 'b.xml' /><rootfile full-path="a.xml">`;
    const files = { 'META-INF/container.xml': new TextEncoder().encode(text), 'b.xml': bytes };
    const other = { 'a.xml': new TextEncoder().encode('<html/>') };
    expect(notes(readMusicXml(zipSync({ ...other, ...files })))).toEqual(['0+960 60']);
  });

  test('readMusicXml refuses an archive without a score, cut short, or with damaged data', () => {
    const mxl = zipSync({ 'score.xml': bytes });
    const damaged = mxl.slice();
    damaged.fill(0xff, 45, 60);
    for (const bad of [zipSync({ 'a.txt': bytes }), mxl.slice(0, 50), damaged]) {
      expect(() => readMusicXml(bad)).toThrowError(
        expect.objectContaining({ code: 'MUSICXML_MALFORMED' }),
      );
    }
  });

  test('readMusicXml refuses an archive that would grow beyond 16 MB, before it has', () => {
    const bomb = zipSync({ 'score.xml': new Uint8Array(17 * 1024 * 1024) });
    expect(bomb.length).toBeLessThan(30_000);
    expect(() => readMusicXml(bomb)).toThrowError(
      expect.objectContaining({ code: 'FILE_TOO_LARGE' }),
    );
  });

  test('readMusicXml refuses entities that grow', () => {
    const entities = Array.from(
      { length: 9 },
      (_, at) => `<!ENTITY l${at + 1} "&l${at};&l${at};&l${at};">`,
    );
    const laughs = `<!DOCTYPE x [<!ENTITY l0 "lol">${entities.join('')}]>${score(note('C4')).replace('Tune', '&l9;')}`;
    expect(() => readMusicXml(laughs)).toThrowError(
      expect.objectContaining({ code: 'MUSICXML_MALFORMED' }),
    );
  });

  test('readMusicXml refuses elements too deep in each other', () => {
    const deep = `${'<a>'.repeat(5000)}${'</a>'.repeat(5000)}`;
    expect(() => readMusicXml(deep)).toThrowError(/at most 100 elements/u);
  });

  test.each(['', 'text', '<html/>', '<score-partwise>', '<score-partwise></part>'])(
    'readMusicXml refuses %j',
    (text) => {
      expect(() => readMusicXml(text)).toThrowError(
        expect.objectContaining({ code: 'MUSICXML_MALFORMED' }),
      );
    },
  );

  test('readMusicXml says line and column of ill-formed XML', () => {
    expect(() => readMusicXml('<score-partwise>\n  <part></measure>')).toThrowError(
      expect.objectContaining({ where: { line: 2, column: 19 } }),
    );
  });
});
