import { FORMS, formatForm, makeChart } from '@reedplate/form';
import { writeAbc, writeMidi, writeMusicXml } from '@reedplate/interchange';
import { makeHarp, makePlayer, parseHarp, TUNINGS } from '@reedplate/layout';
import { type Line, makeLine } from '@reedplate/line';
import { chordSuffixes } from '@reedplate/pitch';
import { findPhrases } from '@reedplate/practice';
import { zipSync } from 'fflate';
import { WAV_PATTERNS } from './wav-patterns.js';

const PITCHES = [67, 70, 72, 73, 72, 70, 67, 65];

/** Small lines: with a pickup, in twelve eighths, with chords, over a count-in. */
const LINES: readonly Line[] = [
  makeLine(PITCHES.map((pitch, at) => ({ start: at * 480, duration: 480, pitch }))),
  makeLine(
    PITCHES.map((pitch, at) => ({ start: at * 320, duration: 300, pitch })),
    { metre: '12/8', pickup: 480, tempo: 96, title: 'Riff' },
  ),
  makeLine(
    PITCHES.flatMap((pitch, at) => [
      { start: at * 960, duration: 960, pitch },
      { start: at * 960, duration: 960, pitch: pitch + 4 },
    ]),
  ),
];
const chart = makeChart('quick-change', 'G');
const SHEETS = LINES.flatMap((line) => [{ line }, { line, chart, key: 'G' as const }]);
const encode = (text: string): Uint8Array => new TextEncoder().encode(text);

const ABC = [
  ...SHEETS.map((sheet) => writeAbc(sheet)),
  'X:1\nT:Parts\nM:4/4\nL:1/8\nQ:1/4=90\nP:A2(BA)\nK:G dor\nP:A\n|:"G7"G2 _B>B {c}d2:|1 G4|2 D4||\nP:B\n[M:6/8](3GAB [GB]2 z2|Z3|!coda!C,-C,|]\n',
];
const XML = SHEETS.map((sheet) => writeMusicXml(sheet));
const TABS = [
  '4 -4 (+4+5)',
  "-2:2 -3' (+4+5):1/2 r:3 | 6o",
  '4↑ 4↓ 3↓″',
  '4B 3D 6OB [4B5B]',
  '456i 4e',
  '4+ 4 12',
  '4\u0332 4',
];
const SCALES = ['! a.scl\nJust\n3\n5/4\n3/2\n2/1\n', `x\n12\n${'100.0\n'.repeat(11)}2/1\n`];
const CHORDS = chordSuffixes()
  .slice(0, 30)
  .map((suffix) => `Bb${suffix}/D`);

/** Inputs that each reader takes, by its name. */
export const SEEDS: Readonly<Record<string, readonly (string | Uint8Array)[]>> = {
  readWav: WAV_PATTERNS.slice(-3).map(({ ofSize }) => ofSize(2000) as Uint8Array),
  readMidi: SHEETS.map((sheet) => writeMidi(sheet)),
  readMusicXml: [...XML, ...XML.slice(0, 2).map((xml) => zipSync({ 'score.xml': encode(xml) }))],
  readAbc: ABC,
  readPiece: [
    ...ABC.slice(0, 2),
    ...XML.slice(0, 2),
    ...TABS,
    ...LINES.map((line) => JSON.stringify(line)),
  ],
  detectFormat: [
    ...ABC.slice(0, 2),
    ...XML.slice(0, 2),
    ...SHEETS.slice(0, 2).map((sheet) => writeMidi(sheet)),
    ...TABS,
  ],
  parseTab: TABS,
  parseTimedTab: TABS,
  detectTab: TABS,
  parsePhrase: [...TABS, "-2:2 -3':1/2;scoop+accent r -4;fall100"],
  parseForm: FORMS.map((form) => formatForm(form)),
  recogniseForm: FORMS.slice(0, 8).map((form) => formatForm(form, { key: 'G' })),
  readScala: SCALES,
  readLine: LINES.map((line) => JSON.stringify(line)),
  readForm: FORMS.slice(0, 8).map((form) => JSON.stringify(form)),
  readTuning: TUNINGS.slice(0, 6).map((tuning) => JSON.stringify(tuning)),
  readChart: ['quick-change', 'minor'].map((form) => JSON.stringify(makeChart(form, 'G'))),
  readHarp: ['C', 'low F'].map((harp) => JSON.stringify(parseHarp(harp))),
  readPlayer: [makePlayer(['natural']), makePlayer(['natural', 'bend'])].map((player) =>
    JSON.stringify(player),
  ),
  readPhrase: findPhrases()
    .slice(0, 6)
    .map((phrase) => JSON.stringify(phrase)),
  readPhrases: [
    'name: Gate\nkind: riff\n# ours\n-2 -3:1/2;scoop r:5/2\ngrade: 3\npickup: 1\n-4 | -3',
    JSON.stringify(findPhrases().slice(0, 3)),
  ],
  parseChord: [...CHORDS, 'C', 'F#m7b5', 'Ebmaj7#11'],
  parseNumeral: ['I7', 'bVII', '#ivø7', 'V7/ii', 'iv6'],
  parseScale: ['blues', 'major', 'mixolydian', 'minor pentatonic'],
  parseKey: ['C', 'Bbm', 'F# minor', 'E♭'],
  parseNoteName: ['C', 'F#', 'Bbb', 'E♭'],
  parseMetre: ['4/4', '12/8', '2/2', '7/16'],
  parseHarp: [makeHarp('C').key, 'Bb', 'G low', 'F# country'],
  parseReedEdit: ['5 draw up 1', 'hole 3 blow down 2'],
};
