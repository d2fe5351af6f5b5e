import { ReedplateError } from '@reedplate/pitch';
import { decodeText, LARGEST_INPUT } from '../decode-text.js';
import { inflate, TooMuchData } from './inflate.js';

/** Whether bytes are a compressed MusicXML file: they begin as a ZIP archive. */
export function isMxl(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4;
}

/**
 * The score inside a compressed MusicXML file: what its container names, or else the first score in
 * it, since containers are often ill-formed.
 *
 * @throws ReedplateError `MUSICXML_MALFORMED`; `FILE_TOO_LARGE` where it would grow above 16 MB
 */
export function unpackMxl(bytes: Uint8Array): Uint8Array {
  const entries = readEntries(bytes);
  const named = nameInContainer(entries, bytes);
  const score =
    entries.find(({ name }) => name === named) ??
    entries.find(({ name }) => /\.(?:musicxml|xml)$/iu.test(name) && !name.startsWith('META-INF/'));
  if (score !== undefined) return readEntry(score, bytes);
  throw malformed('this archive', 'a score (.musicxml or .xml) in it');
}

interface ZipEntry {
  readonly name: string;
  readonly method: number;
  readonly size: number;
  /** Where its local header begins. */
  readonly at: number;
}

const CONTAINER = 'META-INF/container.xml';
/** Read tag by tag, each by itself, so that the time is that of reading the text once. */
const ROOT_FILE = /^(?:\w+:)?rootfile\s/u;
const FULL_PATH = /\sfull-path\s*=\s*["']([^"']{1,500})["']/u;

/** Found by its one telling attribute, so that a container with other faults still serves. */
function nameInContainer(entries: readonly ZipEntry[], bytes: Uint8Array): string | undefined {
  const container = entries.find(({ name }) => name === CONTAINER);
  if (container === undefined) return undefined;
  try {
    const tags = decodeText(readEntry(container, bytes)).split('<');
    const paths = tags
      .filter((tag) => ROOT_FILE.test(tag))
      .map((tag) => FULL_PATH.exec(tag.slice(0, 1 + tag.indexOf('>') || undefined))?.[1]);
    return paths.find((path) => path !== undefined);
  } catch (error) {
    if (error instanceof ReedplateError && error.code === 'MUSICXML_MALFORMED') return undefined;
    throw error;
  }
}

const END_SIGNATURE = 0x06054b50;
const ENTRY_SIGNATURE = 0x02014b50;
const LOCAL_SIGNATURE = 0x04034b50;
const MOST_ENTRIES = 1000;
/** The end record is 22 bytes and a comment of at most 65,535. */
const END_LENGTH = 22;
const FARTHEST_END = 65_557;

/** The entries that the directory at the end of an archive lists (APPNOTE 6.3, section 4.3). */
function readEntries(bytes: Uint8Array): readonly ZipEntry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = findEnd(view);
  const count = Math.min(view.getUint16(end + 10, true), MOST_ENTRIES);
  const entries: ZipEntry[] = [];
  let at = view.getUint32(end + 16, true);
  for (let index = 0; index < count; index += 1) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== ENTRY_SIGNATURE) break;
    const nameLength = view.getUint16(at + 28, true);
    entries.push({
      name: new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength)),
      method: view.getUint16(at + 10, true),
      size: view.getUint32(at + 20, true),
      at: view.getUint32(at + 42, true),
    });
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return entries;
}

function findEnd(view: DataView): number {
  const first = Math.max(0, view.byteLength - FARTHEST_END);
  for (let at = view.byteLength - END_LENGTH; at >= first; at -= 1) {
    if (view.getUint32(at, true) === END_SIGNATURE) return at;
  }
  throw malformed('this archive', 'a directory at its end');
}

const STORED = 0;
const DEFLATED = 8;

function readEntry({ name, method, size, at }: ZipEntry, bytes: Uint8Array): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (at + 30 > bytes.length || view.getUint32(at, true) !== LOCAL_SIGNATURE) {
    throw malformed(name, 'an entry where the directory says');
  }
  const start = at + 30 + view.getUint16(at + 26, true) + view.getUint16(at + 28, true);
  const data = bytes.subarray(start, start + size);
  if (method === STORED) return data;
  if (method === DEFLATED) return unpack(name, data);
  throw malformed(name, 'an entry that is stored or deflated');
}

/** Stops as soon as more comes out than any score holds. */
function unpack(name: string, data: Uint8Array): Uint8Array {
  try {
    return inflate(data, LARGEST_INPUT);
  } catch (error) {
    if (error instanceof TooMuchData) throw tooLarge(name);
    throw malformed(name, 'data that can be inflated');
  }
}

function tooLarge(name: string): ReedplateError {
  const expected = `at most ${LARGEST_INPUT / 1024 / 1024} MB when unpacked`;
  return new ReedplateError({ code: 'FILE_TOO_LARGE', value: name, expected });
}

function malformed(value: string, expected: string): ReedplateError {
  return new ReedplateError({ code: 'MUSICXML_MALFORMED', value, expected });
}
