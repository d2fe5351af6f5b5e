/** What the first bytes of files say, of kinds that are met and not read here. */
const KINDS: readonly (readonly [kind: string, sign: string, at?: number])[] = [
  ['a PNG picture', '\u0089PNG'],
  ['a JPEG picture', '\u00ff\u00d8\u00ff'],
  ['a GIF picture', 'GIF8'],
  ['a PDF document', '%PDF'],
  ['a ZIP archive', 'PK\u0003\u0004'],
  ['a gzip archive', '\u001f\u008b'],
  ['a WAV sound file', 'WAVE', 8],
  ['a WebP picture', 'WEBP', 8],
  ['an AIFF sound file', 'AIF', 8],
  ['an MPEG-4 file', 'ftyp', 4],
  ['an MP3 sound file', 'ID3'],
  ['an MP3 sound file', '\u00ff\u00fb'],
  ['a FLAC sound file', 'fLaC'],
  ['an Ogg sound file', 'OggS'],
  ['a word processor file', '\u00d0\u00cf\u0011\u00e0'],
  ['a web page', '<!DOCTYPE html'],
  ['a web page', '<html'],
  ['an SVG picture', '<svg'],
];

const LONGEST_SIGN = 32;

/**
 * What kind of file some bytes are, in words; `undefined` where they look like text. Their bytes
 * themselves would say nothing to anyone.
 *
 * @internal
 */
export function kindOfFile(bytes: Uint8Array): string | undefined {
  if (bytes.length === 0) return 'an empty file';
  const begin = String.fromCharCode(...bytes.subarray(0, LONGEST_SIGN));
  const text = begin.trimStart().toLowerCase();
  const found = KINDS.find(
    ([, sign, at = 0]) =>
      begin.startsWith(sign, at) || (sign.startsWith('<') && text.startsWith(sign.toLowerCase())),
  );
  if (found !== undefined) return found[0];
  // A text of any writing has no zero byte, nor other signs that steer a machine.
  return bytes.subarray(0, 512).some((byte) => byte < 9)
    ? 'a file of bytes that are no text'
    : undefined;
}
