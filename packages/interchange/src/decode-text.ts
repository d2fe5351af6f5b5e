import { kindOfFile, ReedplateError } from '@reedplate/pitch';
import { bytesOf, type FileInput } from './file-bytes.js';

/** Largest file read, in bytes or characters. */
export const LARGEST_INPUT = 16 * 1024 * 1024;

/**
 * The text of a file: as its byte order mark says, else UTF-8, else Latin 1, as old files are. Text
 * comes back as it is, without a byte order mark.
 *
 * @throws ReedplateError `FILE_TOO_LARGE` above 16 MB; `FORMAT_UNKNOWN` for no text and no bytes, and for bytes
 *   of a picture, a sound or the like
 */
export function decodeText(input: FileInput): string {
  if (typeof input === 'string') return requireSize(input, input.length).replace(/^\uFEFF/u, '');
  const given = bytesOf(input);
  if (given === undefined) {
    throw new ReedplateError({
      code: 'FORMAT_UNKNOWN',
      value: input,
      expected: 'text or bytes (a Uint8Array or ArrayBuffer)',
    });
  }
  const bytes = requireSize(given, given.byteLength);
  const marked = markOf(bytes);
  const kind = marked === undefined && bytes.length > 0 ? kindOfFile(bytes) : undefined;
  if (kind !== undefined) {
    throw new ReedplateError({ code: 'FORMAT_UNKNOWN', value: kind, expected: 'a file of text' });
  }
  if (marked !== undefined) return new TextDecoder(marked.encoding).decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('latin1').decode(bytes);
  }
}

/** Whether bytes say by a mark, or as XML does, in which code their text is. */
export const hasMark = (bytes: Uint8Array): boolean => markOf(bytes) !== undefined;

const markOf = (bytes: Uint8Array) =>
  MARKS.find(({ mark }) => mark.every((byte, index) => bytes[index] === byte));

const MARKS = [
  { mark: [0xef, 0xbb, 0xbf], encoding: 'utf-8' },
  { mark: [0xff, 0xfe], encoding: 'utf-16le' },
  { mark: [0xfe, 0xff], encoding: 'utf-16be' },
  // XML in UTF-16 without a mark is known by its first sign.
  { mark: [0x3c, 0x00], encoding: 'utf-16le' },
  { mark: [0x00, 0x3c], encoding: 'utf-16be' },
] as const;

/** The input itself, if it is no larger than what is read. */
export function requireSize<Input>(input: Input, size: number): Input {
  if (size <= LARGEST_INPUT) return input;
  throw new ReedplateError({
    code: 'FILE_TOO_LARGE',
    value: `${size} bytes`,
    expected: `at most ${LARGEST_INPUT / 1024 / 1024} MB`,
  });
}
