import {
  deepFreeze,
  kindOfFile,
  type OptionNames,
  ReedplateError,
  requireOneOf,
  requireOptions,
  requireShape,
} from '@reedplate/pitch';
import { detectTab } from '@reedplate/tab';
import { decodeText, hasMark } from '../decode-text.js';
import { bytesOf, type FileInput } from '../file-bytes.js';
import { isMxl } from '../musicxml/unpack-mxl.js';
import { tabRowsOf } from '../tab/tab-rows.js';
import { tabWithoutLengths } from './tab-text.js';

/** A format that is read and written. */
export interface PieceFormat {
  readonly id: string;
  readonly description: string;
  /** Endings of file names, the one written first. */
  readonly endings: readonly string[];
  /** Those of them that are read and not written. */
  readonly onlyRead: readonly string[];
}

/** The formats of whole pieces. */
export const PIECE_FORMATS = /* @__PURE__ */ deepFreeze({
  line: {
    id: 'line',
    description: 'a line as JSON',
    endings: ['.json'],
    onlyRead: [],
  },
  midi: {
    id: 'midi',
    description: 'a Standard MIDI File',
    endings: ['.mid', '.midi', '.kar', '.rmi'],
    onlyRead: ['.rmi'],
  },
  musicxml: {
    id: 'musicxml',
    description: 'MusicXML 4.0 (compressed files are read)',
    endings: ['.musicxml', '.xml', '.mxl'],
    onlyRead: ['.mxl'],
  },
  abc: { id: 'abc', description: 'ABC notation 2.1', endings: ['.abc'], onlyRead: [] },
  tab: {
    id: 'tab',
    description: 'harmonica tablature with rhythm (for a harp)',
    endings: ['.tab', '.txt'],
    onlyRead: [],
  },
} as const satisfies Readonly<Record<PieceFormatId, PieceFormat>>);

/** Name of a format. */
export type PieceFormatId = 'line' | 'midi' | 'musicxml' | 'abc' | 'tab';

/** The names of all formats. */
export const PIECE_FORMAT_IDS: readonly PieceFormatId[] = Object.freeze([
  'line',
  'midi',
  'musicxml',
  'abc',
  'tab',
]);

/** What a file's name is looked up for. */
export interface FormatOfNameOptions {
  /** Default `read`; `write` refuses the endings of formats that are read and not written. */
  readonly to?: 'read' | 'write';
}

const NAME_OPTIONS: OptionNames<FormatOfNameOptions> = { to: true };

/**
 * The format that a file's name asks for, by its ending.
 *
 * @throws ReedplateError `FORMAT_UNKNOWN`
 * @example
 * ```ts
 * import { formatOfName } from '@reedplate/interchange';
 *
 * formatOfName('out/sheet.musicxml'); // => 'musicxml'
 * formatOfName('sheet.pdf'); // throws FORMAT_UNKNOWN
 * formatOfName('sheet.mxl', { to: 'write' }); // throws FORMAT_UNKNOWN
 * ```
 */
export function formatOfName(name: string, options: FormatOfNameOptions = {}): PieceFormatId {
  const { to = 'read' } = requireOptions(options, NAME_OPTIONS, 'formatOfName');
  requireOneOf(to, ['read', 'write'], { what: 'what is done with the file' });
  requireShape({ name }, { name: 'text' }, { what: 'the name of a file', code: 'FORMAT_UNKNOWN' });
  const ending = /\.[a-z]+$/iu.exec(name)?.[0].toLowerCase() ?? '';
  const found = PIECE_FORMAT_IDS.find((id) =>
    PIECE_FORMATS[id].endings.some((each) => each === ending),
  );
  const isWritten =
    found === undefined || !PIECE_FORMATS[found].onlyRead.some((each) => each === ending);
  if (found !== undefined && (to === 'read' || isWritten)) return found;
  const endings = PIECE_FORMAT_IDS.map((id) => PIECE_FORMATS[id].endings[0]).join(', ');
  throw new ReedplateError({
    code: 'FORMAT_UNKNOWN',
    value: name,
    expected: `a name that ends in ${endings}${isWritten ? '' : ` (${ending} is read, not written)`}`,
  });
}

/**
 * The format of a file, from what is in it.
 *
 * @throws ReedplateError `FORMAT_UNKNOWN` where no reader would know it, `FILE_TOO_LARGE`
 * @example
 * ```ts
 * import { detectFormat } from '@reedplate/interchange';
 *
 * detectFormat('X:1\nK:G\nGABc'); // => 'abc'
 * detectFormat("-2 -3' +4"); // => 'tab'
 * detectFormat('Dear reader'); // throws FORMAT_UNKNOWN
 * ```
 */
export function detectFormat(input: FileInput): PieceFormatId {
  const bytes = bytesOf(input);
  if (bytes !== undefined) {
    if (isMidi(bytes)) return 'midi';
    if (isMxl(bytes)) return 'musicxml';
    const kind = kindOfFile(bytes);
    if (kind !== undefined && !hasMark(bytes)) throw unknownFormat(kind);
  }
  const text = decodeText(input);
  const found = SIGNS.find(([, sign]) => sign.test(text))?.[0];
  if (found !== undefined) return found;
  if (isJson(text)) return 'line';
  if (isTab(text)) return 'tab';
  // A bracket may open a chord of tablature; where it does not, it is JSON that its reader can fault.
  if (/^\s*\[/u.test(text)) return 'line';
  throw unknownFormat(text);
}

function unknownFormat(value: string): ReedplateError {
  const expected = PIECE_FORMAT_IDS.map((id) => PIECE_FORMATS[id].description).join(', ');
  return new ReedplateError({ code: 'FORMAT_UNKNOWN', value, expected });
}

/** What tells text formats apart, the surest first. */
const SIGNS: readonly (readonly [PieceFormatId, RegExp])[] = [
  ['line', /^\s*(?:\{|\[\s*[\]{["])/u],
  ['musicxml', /<score-(?:partwise|timewise)\b|^\s*<\?xml/u],
  ['abc', /^[XK]:/mu],
];

function isMidi(bytes: Uint8Array): boolean {
  const name = String.fromCharCode(...bytes.subarray(0, 4));
  const kind = String.fromCharCode(...bytes.subarray(8, 12));
  return name === 'MThd' || (name === 'RIFF' && kind === 'RMID');
}

/** Whether it is a list or text of JSON; a number alone may be tablature. */
function isJson(text: string): boolean {
  if (!/^\s*["[]/u.test(text)) return false;
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

const USUAL_HOLES = 10;
/** Most that a harp here has. */
const MOST_HOLES = 16;

/**
 * Whether it is tablature, of whatever harp: the reader, who knows the harp, says that a hole is not there.
 * A harp of ten comes first, on which a number such as 45 is two holes.
 */
function isTab(text: string): boolean {
  const tab = tabWithoutLengths(tabRowsOf(text).tab);
  return [USUAL_HOLES, MOST_HOLES].some((holes) => isTabFor(tab, holes));
}

function isTabFor(tab: string, holes: number): boolean {
  try {
    return detectTab(tab, { holes }).events.length > 0;
  } catch (error) {
    if (error instanceof ReedplateError && error.code === 'TAB_SYNTAX') return false;
    throw error;
  }
}

/** The id itself, if it names a format. */
export function requireFormat(id: string): PieceFormatId {
  return requireOneOf(id, PIECE_FORMAT_IDS, { what: 'a format', code: 'FORMAT_UNKNOWN' });
}
