import { makeLine } from '@reedplate/line';
import { parseMidi } from 'midi-file';
import { expect, test } from 'vitest';
import { published } from '../../../../test/sources/published.js';
import { readBytes } from './byte-reader.js';
import { readMidi } from './read-midi.js';
import { writeMidi } from './write-midi.js';

const bytesOf = (hex: string): Uint8Array =>
  Uint8Array.from(
    hex
      .trim()
      .split(/\s+/u)
      .map((byte) => Number.parseInt(byte, 16)),
  );

published('midi-files', 'examples of variable-length quantities', () => {
  test.each([
    ['00000000', '00'],
    ['00000040', '40'],
    ['0000007F', '7F'],
    ['00000080', '81 00'],
    ['00002000', 'C0 00'],
    ['00003FFF', 'FF 7F'],
    ['00004000', '81 80 00'],
    ['00100000', 'C0 80 00'],
    ['001FFFFF', 'FF FF 7F'],
    ['00200000', '81 80 80 00'],
    ['08000000', 'C0 80 80 00'],
    ['0FFFFFFF', 'FF FF FF 7F'],
  ])('readBytes reads %s from %s', (number, written) => {
    const bytes = readBytes(bytesOf(written));
    expect(bytes.variable()).toBe(Number.parseInt(number, 16));
    expect(bytes.isDone()).toBe(true);
  });
});

const EXAMPLE = bytesOf(`
  4D 54 68 64 00 00 00 06 00 00 00 01 00 60
  4D 54 72 6B 00 00 00 3B
  00 FF 58 04 04 02 18 08
  00 FF 51 03 07 A1 20
  00 C0 05
  00 C1 2E
  00 C2 46
  00 92 30 60
  00 3C 60
  60 91 43 40
  60 90 4C 20
  81 40 82 30 40
  00 3C 40
  00 81 43 40
  00 80 4C 40
  00 FF 2F 00`);

published('midi-files', 'the example of a file of format 0', () => {
  test.each([
    ['the first channel from beat 3 for two beats', 1, ['1920+1920 76']],
    ['the second from beat 2 for three', 2, ['960+2880 67']],
    ['the third for the whole bar, in octaves', 3, ['0+3840 48', '0+3840 60']],
  ])('readMidi plays %s', (_, part, expected) => {
    const { line } = readMidi(EXAMPLE, { part });
    const notes = line.notes.map(({ start, duration, pitch }) => `${start}+${duration} ${pitch}`);
    expect(notes).toEqual(expected);
  });

  test('readMidi reads its metre of four quarters and its tempo of 120', () => {
    const { line } = readMidi(EXAMPLE, { part: 1 });
    expect(line.metre).toBe('4/4');
    expect(line.tempo).toBe(120);
  });
});

published('general-midi', 'the program of the harmonica', () => {
  test('writeMidi names program 23 counted from 1, 22 in the file', () => {
    const line = makeLine([{ start: 0, duration: 960, pitch: 67 }]);
    const events = parseMidi(writeMidi({ line })).tracks.flat();
    const programs = events.flatMap((event) =>
      event.type === 'programChange' ? [event.programNumber] : [],
    );
    expect(programs).toEqual([23 - 1]);
  });
});
