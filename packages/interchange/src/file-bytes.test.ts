import { runInNewContext } from 'node:vm';
import { makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { readAbc } from './abc/read-abc.js';
import { decodeText } from './decode-text.js';
import { bytesOf } from './file-bytes.js';
import { detectFormat } from './formats/formats.js';
import { readPiece } from './formats/read-piece.js';
import { writePiece } from './formats/write-piece.js';
import { readMidi } from './midi/read-midi.js';
import { writeMidi } from './midi/write-midi.js';
import { readMusicXml } from './musicxml/read-musicxml.js';
import { writeMusicXml } from './musicxml/write-musicxml.js';

const DATA = Uint8Array.of(9, 88, 58, 49, 9).subarray(1, 4);
const buffer = Uint8Array.from(DATA).buffer;

/** A file as bytes, in every shape that a program may hold it in. */
function shapesOf(bytes: Uint8Array): readonly (readonly [string, Uint8Array])[] {
  const copy = Uint8Array.from(bytes);
  const padded = new Uint8Array(bytes.length + 8);
  padded.set(bytes, 3);
  const shapes: readonly (readonly [string, unknown])[] = [
    ['Uint8Array', copy],
    ['part of a larger buffer', padded.subarray(3, 3 + bytes.length)],
    ['Buffer', Buffer.from(bytes)],
    ['ArrayBuffer', copy.buffer],
    ['DataView', new DataView(padded.buffer, 3, bytes.length)],
    ['Uint8Array of another realm', runInNewContext('Uint8Array.from(list)', { list: [...bytes] })],
    [
      'ArrayBuffer of another realm',
      runInNewContext('Uint8Array.from(list).buffer', { list: [...bytes] }),
    ],
  ];
  return shapes as readonly (readonly [string, Uint8Array])[];
}

const line = makeLine([{ start: 0, duration: 960, pitch: 67 }], { tempo: 100 });
const encode = (text: string) => new TextEncoder().encode(text);
const score = writeMusicXml({ line });
const abc = 'X:1\nL:1/4\nK:C\nG|]\n';

describe('bytesOf', () => {
  test.each(shapesOf(DATA))('takes a %s', (_, shape) => {
    expect([...(bytesOf(shape) ?? [])]).toEqual([...DATA]);
    expect(decodeText(shape)).toBe('X:1');
  });

  test.each([['X:1'], [null], [undefined], [7], [[88]], [{}], [{ byteLength: 3 }]])(
    'takes %j for no bytes',
    (input) => {
      expect(bytesOf(input)).toBeUndefined();
    },
  );

  test('copies nothing', () => {
    expect(bytesOf(buffer)?.buffer).toBe(buffer);
    expect(bytesOf(DATA)).toBe(DATA);
  });
});

describe('readers', () => {
  test.each(shapesOf(writeMidi({ line })))('read a MIDI file as %s', (_, file) => {
    expect(readMidi(file).line).toEqual(line);
    expect([detectFormat(file), readPiece(file).line]).toEqual(['midi', line]);
  });

  test.each(shapesOf(encode(score)))('read MusicXML as %s', (_, file) => {
    expect(readMusicXml(file)).toEqual(readMusicXml(score));
    expect([detectFormat(file), readPiece(file)]).toEqual(['musicxml', readMusicXml(score)]);
  });

  test.each(shapesOf(encode(abc)))('read ABC as %s', (_, file) => {
    expect(readAbc(file)).toEqual(readAbc(abc));
    expect([detectFormat(file), readPiece(file)]).toEqual(['abc', readAbc(abc)[0]]);
  });

  test.each(shapesOf(encode(JSON.stringify(line))))('read a line as %s', (_, file) => {
    expect(readPiece(file).line).toEqual(line);
  });
});

describe('writers', () => {
  test('give what Blob, Response and a request take', async () => {
    const bytes = writeMidi({ line });
    expect(readMidi(await new Response(bytes).arrayBuffer()).line).toEqual(line);
    const kept = new Uint8Array(await new Blob([bytes]).arrayBuffer());
    expect(readMidi(kept).line).toEqual(line);
    const request = new Request('http://localhost/', { method: 'POST', body: bytes });
    expect(readMidi(await request.arrayBuffer()).line).toEqual(line);
    const text = await new Response(writePiece({ line }, 'musicxml')).text();
    expect(text).toBe(score);
  });
});
