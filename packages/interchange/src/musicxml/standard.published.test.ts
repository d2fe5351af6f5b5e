import { parseChord } from '@reedplate/pitch';
import { expect, test } from 'vitest';
import { published } from '../../../../test/sources/published.js';
import { symbolOfHarmony } from './harmony.js';
import { readMusicXml } from './read-musicxml.js';
import { readXml } from './xml-tree.js';

/** What a kind consists of, in semitones above the root. */
const KINDS: readonly (readonly [string, string, readonly number[]])[] = [
  ['major', 'major third, perfect fifth', [0, 4, 7]],
  ['minor', 'minor third, perfect fifth', [0, 3, 7]],
  ['augmented', 'major third, augmented fifth', [0, 4, 8]],
  ['diminished', 'minor third, diminished fifth', [0, 3, 6]],
  ['dominant', 'major triad, minor seventh', [0, 4, 7, 10]],
  ['major-seventh', 'major triad, major seventh', [0, 4, 7, 11]],
  ['minor-seventh', 'minor triad, minor seventh', [0, 3, 7, 10]],
  ['diminished-seventh', 'diminished triad, diminished seventh', [0, 3, 6, 9]],
  ['augmented-seventh', 'augmented triad, minor seventh', [0, 4, 8, 10]],
  ['half-diminished', 'diminished triad, minor seventh', [0, 3, 6, 10]],
  ['major-minor', 'minor triad, major seventh', [0, 3, 7, 11]],
  ['major-sixth', 'major triad, added sixth', [0, 4, 7, 9]],
  ['minor-sixth', 'minor triad, added sixth', [0, 3, 7, 9]],
  ['dominant-ninth', 'dominant-seventh, major ninth', [0, 4, 7, 10, 2]],
  ['major-ninth', 'major-seventh, major ninth', [0, 4, 7, 11, 2]],
  ['minor-ninth', 'minor-seventh, major ninth', [0, 3, 7, 10, 2]],
  ['minor-11th', 'minor-ninth, perfect 11th', [0, 3, 7, 10, 2, 5]],
  ['suspended-second', 'major second, perfect fifth', [0, 2, 7]],
  ['suspended-fourth', 'perfect fourth, perfect fifth', [0, 5, 7]],
  ['power', 'perfect fifth', [0, 7]],
];

published('musicxml', 'the kinds of chord, data type kind-value', () => {
  test.each(KINDS)('symbolOfHarmony reads %s as %s', (kind, _, semitones) => {
    const harmony = `<harmony><root><root-step>C</root-step></root><kind>${kind}</kind></harmony>`;
    const { tones } = parseChord(symbolOfHarmony(readXml(harmony)));
    expect(tones.map(({ pitchClass }) => pitchClass)).toEqual(semitones);
  });

  test.each([
    [
      'kind',
      '<root><root-step>C</root-step></root><kind use-symbols="yes">major-seventh</kind>',
      'Cmaj7',
    ],
    [
      'root-alter',
      '<root><root-step>C</root-step><root-alter>1</root-alter></root><kind halign="center" text="">major</kind><bass arrangement="horizontal"><bass-step>G</bass-step></bass>',
      'C#/G',
    ],
  ])('symbolOfHarmony reads the example of %s', (_, inside, symbol) => {
    const read = symbolOfHarmony(readXml(`<harmony>${inside}</harmony>`));
    expect(read).toBe(symbol);
  });
});

const part = (measures: string): string =>
  `<score-partwise version="4.0"><part-list><score-part id="P1"><part-name>Music</part-name></score-part></part-list><part id="P1">${measures}</part></score-partwise>`;
const attributes = (divisions: number): string =>
  `<attributes><divisions>${divisions}</divisions></attributes>`;
const note = (step: string, octave: number, duration: number, more = '', alter = ''): string =>
  `<note>${more.startsWith('<chord') ? more : ''}<pitch><step>${step}</step>${alter === '' ? '' : `<alter>${alter}</alter>`}<octave>${octave}</octave></pitch><duration>${duration}</duration>${more.startsWith('<chord') ? '' : more}</note>`;

const TRIPLET =
  '<type>quarter</type><time-modification><actual-notes>3</actual-notes><normal-notes>2</normal-notes></time-modification>';

published('musicxml', 'examples of the reference, and the first of the tutorial', () => {
  test.each([
    [
      'Hello, World',
      `<measure number="1"><attributes><divisions>1</divisions><key><fifths>0</fifths></key><time><beats>4</beats><beat-type>4</beat-type></time><clef><sign>G</sign><line>2</line></clef></attributes>${note('C', 4, 4, '<type>whole</type>')}</measure>`,
      ['0+3840 60'],
    ],
    [
      'divisions and duration',
      `<measure number="1">${attributes(32)}${note('A', 4, 128, '<voice>1</voice><type>whole</type>')}</measure>`,
      ['0+3840 69'],
    ],
    [
      'dot, at two divisions',
      `<measure number="1">${attributes(2)}${note('A', 4, 3, '<voice>1</voice><type>quarter</type><dot/>')}</measure>`,
      ['0+1440 69'],
    ],
    [
      'pitch, at two divisions',
      `<measure number="1">${attributes(2)}${note('G', 3, 1, '<voice>1</voice><type>eighth</type>')}</measure>`,
      ['0+480 55'],
    ],
    [
      'chord',
      `<measure number="55">${attributes(32)}${note('F', 4, 128)}${note('A', 4, 128, '<chord/>')}${note('C', 5, 128, '<chord/>')}</measure>`,
      ['0+3840 65', '0+3840 69', '0+3840 72'],
    ],
    [
      'alter, in semitones',
      `<measure number="1">${attributes(8)}${note('B', 4, 4, '', '-2')}${note('B', 4, 4, '', '-1')}${note('B', 4, 4)}${note('B', 4, 4, '', '1')}${note('B', 4, 8, '', '2')}</measure>`,
      ['0+480 69', '480+480 70', '960+480 71', '1440+480 72', '1920+960 73'],
    ],
    [
      'time-modification, at six divisions',
      `<measure number="3">${attributes(6)}${note('D', 5, 4, TRIPLET)}${note('E', 5, 4, TRIPLET)}${note('D', 5, 4, TRIPLET)}</measure>`,
      ['0+640 74', '640+640 76', '1280+640 74'],
    ],
    [
      'tied, at two divisions',
      `<measure number="85">${attributes(2)}${note('C', 5, 4, '<tie type="start"/>')}${note('C', 5, 1, '<tie type="stop"/>')}<note><rest/><duration>1</duration></note><note><rest/><duration>2</duration></note></measure>`,
      ['0+2400 72'],
    ],
  ])('readMusicXml reads the example of %s', (_, measures, expected) => {
    const { line } = readMusicXml(part(measures));
    const notes = line.notes.map(({ start, duration, pitch }) => `${start}+${duration} ${pitch}`);
    expect(notes).toEqual(expected);
  });
});
