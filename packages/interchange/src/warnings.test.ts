import { makeHarp } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { readAbc } from './abc/read-abc.js';
import { readPiece } from './formats/read-piece.js';
import { unsupportedIn } from './formats/unsupported-in.js';
import { END, message, midiFile, text } from './midi/midi-bytes.fixture.js';
import { readMidi } from './midi/read-midi.js';
import { readMusicXml } from './musicxml/read-musicxml.js';
import type { Piece } from './piece.js';
import {
  makeWarningList,
  PIECE_WARNINGS,
  type PieceWarning,
  type PieceWarningCode,
} from './warning.js';

const HEAD = 'X:1\nM:4/4\nL:1/4\nK:C\n';
const abc = (body: string, head = HEAD): readonly PieceWarning[] =>
  readAbc(`${head}${body}\n`)[0]?.warnings ?? [];
const xml = (measures: string, head = '<time><beats>4</beats><beat-type>4</beat-type></time>') =>
  readMusicXml(
    `<score-partwise><part-list><score-part id="P1"><part-name/></score-part></part-list><part id="P1"><measure number="1"><attributes><divisions>1</divisions>${head}</attributes>${measures}</measure></part></score-partwise>`,
  ).warnings;
const note = (inside: string): string =>
  `<note>${inside}<duration>4</duration><type>whole</type></note>`;
const C4 = '<pitch><step>C</step><octave>4</octave></pitch>';
const midi = (...events: readonly (readonly number[])[]): readonly PieceWarning[] =>
  readMidi(midiFile([[...events.flat(), ...END]])).warnings;
const stroke = [...message(0, 0x90, 60, 64), ...message(96, 0x80, 60, 64)];
const tab = (text: string): Piece => readPiece(text, { format: 'tab', harp: makeHarp('C') });
const line = makeLine([{ start: 0, duration: 960, pitch: 60 }], { title: 'Riff' });
const kit = { name: 'Kit', percussion: true, line: makeLine([]) } as const;

/** What each warning is met with: at least once, by the reader that says it. */
const MET: Readonly<Record<PieceWarningCode, readonly (readonly PieceWarning[])[]>> = {
  'grace-notes': [abc('{~}A4|]')],
  'cue-notes': [xml(note(C4).replace('<pitch>', '<cue/><pitch>') + note(C4))],
  ornaments: [
    abc('!trill!A4|]'),
    xml(note(C4).replace('</note>', '<notations><ornaments/></notations></note>')),
  ],
  words: [
    abc('A4|]\nw:la'),
    xml(note(C4).replace('</note>', '<lyric><text>la</text></lyric></note>')),
  ],
  'chord-unknown': [
    abc('"G7"A2"H9"A2|]'),
    xml(`<harmony><root><root-step>H</root-step></root><kind>major</kind></harmony>${note(C4)}`),
  ],
  'chord-alternative': [abc('"G7""C7"A4|]')],
  'symbol-unknown': [abc('A3 $A|]')],
  'field-unknown': [
    abc('A4|]', 'X:1\nM:4/4\nL:x\nK:C\n'),
    xml(note(C4), '<time><beats>x</beats><beat-type>4</beat-type></time>'),
    midi(message(0, 0xff, 0x58, 4, 0, 2, 24, 8), stroke),
  ],
  'key-missing': [abc('A4|]', 'X:1\nM:4/4\n')],
  'metre-missing': [abc('A4|]', 'X:1\nK:C\n'), xml(note(C4), '')],
  'metre-change': [
    abc('A4|[M:3/4]A3|]'),
    midi(
      message(0, 0xff, 0x58, 4, 4, 2, 24, 8),
      stroke,
      message(0, 0xff, 0x58, 4, 3, 2, 24, 8),
      stroke,
    ),
  ],
  'key-change': [abc('A4|[K:G]A4|]')],
  'bars-off-grid': [abc('A4|A3|A4|]')],
  'tie-open': [abc('A4-|B4|]')],
  'pitch-range': [abc("c''''''4|]")],
  'notes-missing': [abc('z4|]'), xml(note('<rest/>')), midi()],
  'part-doubtful': [midi(text(3, 'Bass'), stroke)],
  'part-tie': [midi(stroke, message(0, 0x91, 60, 64), message(96, 0x81, 60, 64))],
  'note-open': [midi(message(0, 0x90, 60, 64), message(96, 0xb0, 1, 1))],
  'note-empty': [abc('A0A4|]'), midi(message(0, 0x90, 60, 64), message(0, 0x80, 60, 0))],
  'pitch-bend': [
    readMidi(
      midiFile([
        [
          ...[101, 100].flatMap((parameter) => message(0, 0xb0, parameter, 0)),
          ...[...message(0, 0xb0, 6, 60), ...message(0, 0xe0, 0, 0), ...stroke, ...END],
        ],
      ]),
      { bends: false },
    ).warnings,
  ],
  'tab-ambiguous': [tab('4 5').warnings],
  percussion: [xml(note('<unpitched/>'))],
  'data-malformed': [readMidi(midiFile([[...stroke, 0x90]])).warnings],
  'repeat-jump': [
    abc('A4 !D.S.!|]'),
    xml(`${note(C4)}<sound dalsegno="x"/>`),
    abc('A4|]', 'X:1\nM:4/4\nL:1/4\nP:AB\nK:C\n'),
  ],
  'notes-apart': [
    unsupportedIn(
      {
        line: makeLine([
          { start: 0, duration: 960, pitch: 60 },
          { start: 0, duration: 960, pitch: 62 },
        ]),
      },
      'tab',
      { harp: 'C' },
    ),
  ],
  'chart-unwritten': [unsupportedIn(readAbc(`${HEAD}"G7"A4|]`)[0] ?? { line }, 'line')],
  'parts-unwritten': [unsupportedIn({ line, parts: [{ name: 'Low', line: makeLine([]) }] }, 'tab')],
  'percussion-unwritten': [unsupportedIn({ line, parts: [kit] }, 'abc')],
  'head-unwritten': [
    unsupportedIn({ line, key: 'G' }, 'line'),
    unsupportedIn(
      { line: makeLine(line.notes, { tempo: 90, tempoChanges: [{ start: 480, tempo: 80 }] }) },
      'tab',
    ),
  ],
  'playing-unwritten': [
    unsupportedIn({ line: makeLine([{ start: 0, duration: 9, pitch: 60, accent: true }]) }, 'midi'),
  ],
};

describe('warnings', () => {
  const cases = Object.entries(MET).flatMap(([code, all]) =>
    all.map((warnings, at) => [code as PieceWarningCode, at + 1, warnings] as const),
  );

  test.each(cases)('%s is met (%i), with its message, how often and where', (code, _, warnings) => {
    const met = warnings.find((warning) => warning.code === code);
    expect(met).toMatchObject({ message: PIECE_WARNINGS[code], where: expect.any(Object) });
    expect(met?.count).toBeGreaterThanOrEqual(1);
    expect(Object.isFrozen(met)).toBe(true);
  });

  test('every warning code is met', () => {
    expect(Object.keys(MET).sort()).toEqual(Object.keys(PIECE_WARNINGS).sort());
  });

  test.each([
    ['abc', abc('A4|\nA3 {~}$A|]'), { 'grace-notes': { line: 6, column: 4 } }],
    ['abc', abc('A4|\nA3 {g}$A|]'), { 'symbol-unknown': { line: 6, column: 7 } }],
    ['MusicXML', xml(note(C4.replace('<pitch>', '<cue/><pitch>'))), { 'cue-notes': { bar: 1 } }],
    ['MIDI', readMidi(midiFile([[...stroke, 0x90]])).warnings, { 'data-malformed': { index: 9 } }],
  ] as const)('a warning of %s says where it stood', (_, warnings, places) => {
    for (const [code, where] of Object.entries(places)) {
      expect(warnings.find((warning) => warning.code === code)?.where).toEqual(where);
    }
  });

  test('makeWarningList counts what comes again, and keeps the first value and place', () => {
    const list = makeWarningList();
    list.add('words', { bar: 2 }, 'la');
    list.add('words', { bar: 9 }, 'lo');
    list.add('ornaments', {}, 'x'.repeat(100));
    const [words, ornaments] = list.all();
    expect(words).toMatchObject({ count: 2, value: 'la', where: { bar: 2 } });
    expect(ornaments?.value).toBe('x'.repeat(60));
  });

  test('what is read without loss has no warning', () => {
    expect(abc('"G7"A4|"C7"B4|]')).toEqual([]);
    expect(xml(note(C4))).toEqual([]);
    expect(midi(stroke)).toEqual([]);
    expect(tab('-2 +4').warnings).toEqual([]);
  });
});
