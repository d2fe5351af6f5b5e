import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { makeBacking } from '@reedplate/backing';
import { makeChart } from '@reedplate/form';
import {
  readAbc,
  readMidi,
  readMusicXml,
  type Sheet,
  writeAbc,
  writeMidi,
  writeMusicXml,
} from '@reedplate/interchange';
import { makeLine, type TimedNote } from '@reedplate/line';
import { PitchDetector } from 'pitchy';
import {
  JUMP_SAMPLES,
  type JumpSample,
} from '../../packages/interchange/src/notation/jump-samples.fixture.js';
import { soundOfMidi } from '../lib/render-midi.js';
import { ROOT } from '../lib/root.mjs';
import { extendSchema } from './extend-schema.js';
import { FORM_SHEETS, HAND_SHEETS, LINE_SHEETS } from './samples.js';

// Checks what we write with other people's readers: abc2midi, fluidsynth, MuseScore 3, xmllint with
// the official schema. install-outside.sh installs them. Ends with 1 where one disagrees.
// `npm run check-outside -- musicxml.xsd` takes that schema, such as the official one of 4.0, in place
// of the one of 3.1 with what 4.0 adds.
const [OWN_SCHEMA] = process.argv.slice(2);
const folder = mkdtempSync(join(tmpdir(), 'reedplate-outside-'));
const inFolder = (name: string): string => join(folder, name);
const SCHEMA = `${ROOT}.outside/schema/musicxml.xsd`;
const EXTENDED = `${ROOT}.outside/schema/musicxml-extended.xsd`;

/** Ticks that abc2midi lets go before the end of a note, and sets chords apart by. */
const LOOSE = 30;

function checkAbc({ line, ...sheet }: Sheet): readonly string[] {
  // A tempo or a title changes no note; chord symbols would be played along.
  const plain = makeLine(line.notes, { metre: line.metre, pickup: line.pickup });
  const abc = writeAbc({ ...sheet, line: plain }).replace(/\nK:.*/u, '$&\n%%MIDI gchordoff');
  writeFileSync(inFolder('a.abc'), abc);
  execFileSync('abc2midi', [inFolder('a.abc'), '-o', inFolder('a.mid'), '-silent']);
  const { line: read } = readMidi(readFileSync(inFolder('a.mid')));
  return differences(plain.notes, read.notes, LOOSE);
}

function differences(
  ours: readonly TimedNote[],
  theirs: readonly TimedNote[],
  most: number,
): readonly string[] {
  if (ours.length !== theirs.length) return [`${ours.length} notes, read as ${theirs.length}`];
  // A pickup may be read as the end of a whole bar.
  const shift = (theirs[0]?.start ?? 0) - (ours[0]?.start ?? 0);
  const byPitch = (notes: readonly TimedNote[]): readonly TimedNote[] =>
    [...notes].sort((a, b) => Math.round((a.start - b.start) / LOOSE) || a.pitch - b.pitch);
  const read = byPitch(theirs);
  return byPitch(ours).flatMap((note, at) => {
    const other = read[at];
    const isSame =
      other !== undefined &&
      other.pitch === note.pitch &&
      Math.abs(other.start - shift - note.start) <= most &&
      Math.abs(other.duration - note.duration) <= most;
    return isSame
      ? []
      : [`note ${at + 1}: ${JSON.stringify(note)} read as ${JSON.stringify(other)}`];
  });
}

/** With words, as tab is written, and every element that any sheet has. */
function toMusicXml(sheet: Sheet): string {
  return writeMusicXml(sheet, { words: sheet.line.notes.map(() => "-3''") });
}

function checkMusicXml(sheet: Sheet): readonly string[] {
  return validate(toMusicXml(sheet));
}

/** What xmllint has against a document; nothing where it is valid. */
function validate(xml: string): readonly string[] {
  writeFileSync(inFolder('a.musicxml'), xml);
  try {
    const schema = OWN_SCHEMA ?? EXTENDED;
    const quiet = ['--noout', '--nonet', '--schema', schema, inFolder('a.musicxml')];
    execFileSync('xmllint', quiet, { stdio: 'pipe' });
    return [];
  } catch (error) {
    return [String((error as { readonly stderr: unknown }).stderr).split('\n')[0] ?? 'invalid'];
  }
}

/** Slips that the schema must find, or its word on the others says nothing. */
const SLIPS: readonly (readonly [string | RegExp, string])[] = [
  ['<second>1</second>', ''],
  ['<swing-type>eighth</swing-type>', '<swing-type>quarter</swing-type>'],
  ['<first>2</first>', '<first>0</first>'],
  ['<kind text="7">dominant</kind>', '<kind text="7">seventh</kind>'],
  ['<tuplet type="start"/>', '<tuplet/>'],
  [/<duration>\d+<\/duration>/u, ''],
];

/** The slips that the schema lets pass. */
function checkSlips(): readonly string[] {
  const triplet = [0, 320, 640].map((start) => ({ start, duration: 320, pitch: 67 }));
  const chart = makeChart('basic', 'G', { tempo: TEMPO });
  const xml = toMusicXml({ line: makeLine(triplet), chart });
  return SLIPS.flatMap(([good, bad]) => {
    const spoiled = xml.replace(good, bad);
    if (spoiled === xml) return [`${good} is not in the document`];
    return validate(spoiled).length > 0 ? [] : [`${good} as ${bad || 'nothing'}`];
  });
}

/** MuseScore counts 480 ticks to the quarter, and ends notes one early. */
function checkByMuseScore(sheet: Sheet): readonly string[] {
  writeFileSync(inFolder('a.musicxml'), toMusicXml(sheet));
  return differences(sheet.line.notes, playByMuseScore(), LOOSE);
}

function playByMuseScore(): readonly TimedNote[] {
  const env = {
    ...process.env,
    QT_QPA_PLATFORM: 'offscreen',
    HOME: folder,
    XDG_RUNTIME_DIR: folder,
  };
  execFileSync('musescore3', ['-o', inFolder('m.mid'), inFolder('a.musicxml')], {
    env,
    stdio: 'pipe',
    timeout: 60_000,
  });
  const { parts } = readMidi(readFileSync(inFolder('m.mid')));
  return parts.flatMap(({ line }) => line.notes);
}

const TEMPO = 120;
const TICKS_A_SECOND = (TEMPO / 60) * 960;
const CENTS = 50;

/** A harmonica alone, a note a beat: a pitch tracker listens in the middle of each. */
function checkPitches(): readonly string[] {
  const pitches = Array.from({ length: 25 }, (_, at) => 60 + at);
  const notes = pitches.map((pitch, at) => ({ start: at * 960, duration: 900, pitch }));
  const line = makeLine(notes, { tempo: TEMPO });
  const { samples, sampleRate: rate } = soundOfMidi(writeMidi({ line }));
  const detector = PitchDetector.forFloat32Array(2048);
  return notes.flatMap(({ start, pitch }) => {
    const at = Math.round(((start + 350) / TICKS_A_SECOND) * rate);
    const [hertz] = detector.findPitch(samples.slice(at, at + 2048), rate);
    const heard = 69 + 12 * Math.log2(hertz / 440);
    const isRight = Math.abs(heard - pitch) * 100 < CENTS;
    return isRight ? [] : [`${pitch} sounds as ${heard.toFixed(2)}`];
  });
}

const SILENCE = 0.001;

/** A band: it sounds from its first click to its last chord, and not much longer. */
function checkLength(): readonly string[] {
  const chart = makeChart('basic', 'G', { tempo: TEMPO });
  const { samples, sampleRate: rate } = soundOfMidi(writeMidi(makeBacking(chart)));
  const first = samples.findIndex((sample) => Math.abs(sample) > SILENCE) / rate;
  const last = samples.findLastIndex((sample) => Math.abs(sample) > SILENCE) / rate;
  const seconds = (14 * 4 * 60) / TEMPO;
  // A synthesiser lets notes ring after their end.
  const isRight = first < 0.1 && last > seconds - 0.5 && last < seconds + 4;
  return isRight ? [] : [`sounds from ${first} s to ${last} s, not from 0 to ${seconds}`];
}

/** Jumps are read: MuseScore and we must play the same measures. */
function checkJumps({ xml, played }: JumpSample): readonly string[] {
  writeFileSync(inFolder('a.musicxml'), xml);
  const theirs = playByMuseScore();
  const ours = readMusicXml(xml).line.notes;
  const pitches = (notes: readonly TimedNote[]): string =>
    notes.map(({ pitch }) => 'C.D.EF.G.A.B'[pitch - 60]).join('');
  return pitches(ours) === played && pitches(theirs) === played
    ? []
    : [`${played}: read as ${pitches(ours)}, by MuseScore as ${pitches(theirs)}`];
}

/** Parts in an order, with repeats and brackets: abc2midi and we must play the same. */
function checkParts(order: string): readonly string[] {
  const abc = `X:1\nM:4/4\nL:1/4\nP:${order}\nK:C\nP:A\n|:CDEF:|\nP:B\nGAGA|G4|\nP:C\nc4|]\n`;
  writeFileSync(inFolder('a.abc'), abc);
  execFileSync('abc2midi', [inFolder('a.abc'), '-o', inFolder('a.mid'), '-silent']);
  const [ours] = readAbc(abc);
  return differences(
    ours?.line.notes ?? [],
    readMidi(readFileSync(inFolder('a.mid'))).line.notes,
    LOOSE,
  );
}

function report(what: string, results: readonly (readonly string[])[]): boolean {
  const wrong = results.filter((each) => each.length > 0);
  console.log(`${what}: ${results.length - wrong.length} of ${results.length} right`);
  for (const [first = '', ...more] of wrong) console.error(`  ${first} (and ${more.length} more)`);
  return wrong.length === 0;
}

function checkBySchema(): boolean {
  if (OWN_SCHEMA === undefined) {
    writeFileSync(EXTENDED, extendSchema(readFileSync(SCHEMA, 'utf8')));
  }
  const documents = report('MusicXML by its schema', sheets.map(checkMusicXml));
  return report('slips that the schema finds', [checkSlips()]) && documents;
}

const sheets = [...LINE_SHEETS, ...FORM_SHEETS, ...HAND_SHEETS];
const passed = [
  report('ABC read by abc2midi', sheets.map(checkAbc)),
  existsSync(OWN_SCHEMA ?? SCHEMA)
    ? checkBySchema()
    : report('MusicXML: no schema here, so none was checked', []),
  report('MusicXML read by MuseScore 3', sheets.map(checkByMuseScore)),
  report('jumps played by MuseScore 3 as we read them', JUMP_SAMPLES.map(checkJumps)),
  report(
    'parts of ABC played by abc2midi',
    ['ABC', 'AABB', 'A2B', '(AB)2C', 'A(BC)3A'].map(checkParts),
  ),
  report('pitches of a MIDI file rendered by fluidsynth', [checkPitches()]),
  report('length of a backing rendered by fluidsynth', [checkLength()]),
];
rmSync(folder, { recursive: true });
process.exitCode = passed.every(Boolean) ? 0 : 1;
