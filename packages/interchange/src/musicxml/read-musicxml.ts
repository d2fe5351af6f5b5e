import { type Metre, parseMetre } from '@reedplate/line';
import { isReedplateError, type KeyName, ReedplateError, requireOptions } from '@reedplate/pitch';
import { decodeText, requireSize } from '../decode-text.js';
import { bytesOf, type FileInput } from '../file-bytes.js';
import { keyOfSignature } from '../midi/read-head.js';
import {
  assemblePiece,
  READ_NOTATION_OPTIONS,
  type ReadNotationOptions,
  type WrittenNotation,
  type WrittenPart,
} from '../notation/assemble-piece.js';
import type { Piece } from '../piece.js';
import { makeWarningList, type WarningList } from '../warning.js';
import { requireParts } from './notation-limits.js';
import { readPart } from './read-part.js';
import { isMxl, unpackMxl } from './unpack-mxl.js';
import { COUNT_IN_FIELD } from './write-musicxml.js';
import { child, childNumber, childrenOf, childText, readXml, type XmlElement } from './xml-tree.js';

/**
 * Reads a MusicXML score, plain or compressed (`.mxl`), partwise or timewise: notes with ties,
 * repeats with endings, chord symbols, transposing instruments at sounding pitch. Each staff is a
 * part of its own, the first the line. Jumps such as D.C. are played where they are clear. Loudness, accents, bends, grace
 * notes and tempo changes are kept. Cue notes, ornaments and lyrics are left out, as the warnings say.
 *
 * @param input text, or the bytes of a file in any encoding that its byte order mark names
 * @throws ReedplateError `MUSICXML_MALFORMED` for what is no score, with line and column where the
 * XML is at fault; `FORMAT_UNKNOWN` for bytes that are no text; `FILE_TOO_LARGE` above 16 MB, also when unpacked
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { readMusicXml, writeMusicXml } from '@reedplate/interchange';
 *
 * const line = makeLine([{ start: 0, duration: 960, pitch: 67 }], { metre: '3/4' });
 * readMusicXml(writeMusicXml({ line })).line; // => { metre: '3/4', pickup: 0, notes: [{ start: 0, duration: 960, pitch: 67 }] }
 * readMusicXml('<html/>'); // throws MUSICXML_MALFORMED
 * ```
 */
export function readMusicXml(input: FileInput, options: ReadNotationOptions = {}): Piece {
  requireOptions(options, READ_NOTATION_OPTIONS, 'readMusicXml');
  const warnings = makeWarningList();
  return assemblePiece(readScore(readXml(textOf(input)), warnings), warnings, options);
}

function textOf(input: FileInput): string {
  const bytes = bytesOf(input);
  if (bytes === undefined) return decodeText(input);
  requireSize(bytes, bytes.byteLength);
  return decodeText(isMxl(bytes) ? unpackMxl(bytes) : bytes);
}

function readScore(root: XmlElement, warnings: WarningList): WrittenNotation {
  const parts = partsOf(root);
  requireParts(parts.length);
  const attributes = parts.flatMap(({ measures }) =>
    measures.flatMap((measure) => childrenOf(measure, 'attributes')),
  );
  const metre = readTime(attributes, warnings);
  const key = readKey(attributes);
  const title = childText(child(root, 'work'), 'work-title') || childText(root, 'movement-title');
  const countIn = readCountIn(root);
  return {
    ...(title === '' ? {} : { title }),
    ...(key === undefined ? {} : { key }),
    metre,
    ...(countIn === undefined ? {} : { countIn }),
    ...(isSwung(parts) ? { feel: 'shuffle' } : {}),
    parts: parts.flatMap((part) => writtenParts(root, part, warnings)),
  };
}

interface ScorePart {
  readonly id: string;
  readonly measures: readonly XmlElement[];
}

function partsOf(root: XmlElement): readonly ScorePart[] {
  if (root.name === 'score-partwise') {
    return childrenOf(root, 'part').map((part) => ({
      id: part.attributes.get('id') ?? '',
      measures: childrenOf(part, 'measure'),
    }));
  }
  if (root.name === 'score-timewise') return turnTimewise(childrenOf(root, 'measure'));
  throw new ReedplateError({
    code: 'MUSICXML_MALFORMED',
    value: `<${root.name}>`,
    expected: 'a score: <score-partwise> or <score-timewise>',
  });
}

/** Gathers each part's share of every measure. */
function turnTimewise(measures: readonly XmlElement[]): readonly ScorePart[] {
  const parts = new Map<string, XmlElement[]>();
  for (const measure of measures) {
    for (const part of childrenOf(measure, 'part')) {
      const id = part.attributes.get('id') ?? '';
      const before = parts.get(id);
      if (before === undefined) parts.set(id, [part]);
      else before.push(part);
    }
  }
  return [...parts].map(([id, own]) => ({ id, measures: own }));
}

function writtenParts(
  root: XmlElement,
  { id, measures }: ScorePart,
  warnings: WarningList,
): readonly WrittenPart[] {
  const entries = childrenOf(child(root, 'part-list') ?? root, 'score-part');
  const entry = entries.find(({ attributes }) => attributes.get('id') === id);
  const program = childNumber(child(entry, 'midi-instrument'), 'midi-program');
  const isProgram =
    program !== undefined && Number.isInteger(program) && program >= 1 && program <= 128;
  const staves = readPart(measures, warnings);
  return [...staves].map(([staff, read]) => ({
    name: `${childText(entry, 'part-name')}${staves.size > 1 ? ` (staff ${staff})` : ''}`,
    ...(isProgram ? { program } : {}),
    measures: read,
  }));
}

function readTime(attributes: readonly XmlElement[], warnings: WarningList): Metre {
  const time = attributes.flatMap((each) => child(each, 'time') ?? [])[0];
  const beats = childText(time, 'beats')
    .split('+')
    .reduce((sum, part) => sum + Number(part), 0);
  const text = `${beats}/${childText(time, 'beat-type')}`;
  try {
    parseMetre(text);
    return text as Metre;
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    if (time === undefined) warnings.add('metre-missing');
    else warnings.add('field-unknown', {}, `metre ${text}`);
    return '4/4';
  }
}

const MINOR_MODES: ReadonlySet<string> = new Set(['minor', 'aeolian', 'dorian', 'phrygian']);
/** Fifths from the signature of a mode to that of the major or minor key on its tonic. */
const FIFTHS_OF_MODE: ReadonlyMap<string, number> = new Map([
  ['dorian', -1],
  ['phrygian', 1],
  ['lydian', -1],
  ['mixolydian', 1],
]);

function readKey(attributes: readonly XmlElement[]): KeyName | undefined {
  const key = attributes.flatMap((each) => child(each, 'key') ?? [])[0];
  const fifths = childNumber(key, 'fifths');
  const mode = childText(key, 'mode');
  if (fifths === undefined) return undefined;
  return keyOfSignature(fifths + (FIFTHS_OF_MODE.get(mode) ?? 0), MINOR_MODES.has(mode));
}

const MOST_COUNT_IN = 64;

function readCountIn(root: XmlElement): number | undefined {
  const fields = childrenOf(
    child(child(root, 'identification'), 'miscellaneous') ?? root,
    'miscellaneous-field',
  );
  const field = fields.find(({ attributes }) => attributes.get('name') === COUNT_IN_FIELD);
  const bars = Number(field?.text ?? 0);
  return Number.isInteger(bars) && bars > 0 && bars <= MOST_COUNT_IN ? bars : undefined;
}

function soundsOf(parts: readonly ScorePart[]): readonly XmlElement[] {
  const elements = parts.flatMap(({ measures }) => measures.flatMap(({ children }) => children));
  return elements.flatMap((each) => (each.name === 'sound' ? [each] : childrenOf(each, 'sound')));
}

function isSwung(parts: readonly ScorePart[]): boolean {
  return soundsOf(parts).some((sound) => child(child(sound, 'swing'), 'first') !== undefined);
}
