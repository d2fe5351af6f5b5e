import { readFileSync } from 'node:fs';
import { readLine } from '@reedplate/line';
import { hearNotes, readWav } from '@reedplate/listen';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { RECORDING as TAKE } from '../../shared/recording.fixture.js';
import { runWords } from '../../shared/run-words.fixture.js';

const run = (...words: readonly string[]) => runWords(words, { readBytes: () => TAKE });

describe('reedplate listen', () => {
  test('reedplate listen prints what was played, with tab and cents', async () => {
    const { code, out, err } = await run('listen', 'take.wav', '--harp', 'C', '--key', 'G');
    expect([code, err]).toEqual([0, '']);
    const [heading, , head, ...rows] = out.trimEnd().split('\n');
    expect(heading).toMatch(/^4 notes in 3\.0 s on a C harp, A4 at 4[34]\d\.\d Hz$/u);
    expect(head?.trim().split(/\s+/u)).toEqual([
      'second',
      'note',
      'tab',
      'for',
      'cents',
      'moves',
      'by',
    ]);
    const cells = rows.map((row) => row.trim().split(/\s+/u));
    expect(cells.map(([, note]) => note)).toEqual(['G4', 'Bb4', 'C5', 'D5']);
    expect(cells.map(([, , tab]) => tab)).toEqual([
      expect.stringMatching(/^(?:-2|\+3)$/u),
      "-3'",
      '+4',
      '-4',
    ]);
    const cents = cells.map(([, , , , each]) => Number(each));
    expect((cents[1] ?? 0) - (cents[0] ?? 0)).toBeCloseTo(-30, -1);
  });

  test('reedplate listen --json prints what hearNotes gives, as its schema has it', async () => {
    const { out } = await run('listen', 'take.wav', '--json');
    const answer = JSON.parse(out);
    expect(answer).toEqual(JSON.parse(JSON.stringify(hearNotes(readWav(TAKE)))));
    const schema = readFileSync(new URL('../../../schemas/listen.json', import.meta.url), 'utf8');
    const accepts = new Ajv({ strict: true, allowUnionTypes: true }).compile(JSON.parse(schema));
    expect(accepts(answer), JSON.stringify(accepts.errors)).toBe(true);
  });

  test('reedplate listen -o writes a line in bars and beats, from where the first note begins', async () => {
    let written = '';
    const { code } = await runWords(
      ['listen', 'take.wav', '--harp', 'C', '--tempo', '120', '-o', 'take.json'],
      {
        readBytes: () => TAKE,
        writeBytes: (_, bytes) => {
          written = new TextDecoder().decode(bytes);
        },
      },
    );
    expect(code).toBe(0);
    const { notes, tempo } = readLine(written);
    expect(tempo).toBe(120);
    expect(notes.map(({ pitch }) => pitch)).toEqual([67, 70, 72, 74]);
    expect(notes.map(({ start }) => Math.round(start / 960))).toEqual([0, 1, 2, 3]);
  });

  test('reedplate listen says so where it hears nothing', async () => {
    const silence = TAKE.slice().fill(0, 44);
    const { code, out } = await runWords(['listen', 'take.wav'], { readBytes: () => silence });
    expect([code, out]).toEqual([
      0,
      '0 notes in 3.0 s, A4 at 440.0 Hz\nnothing with a pitch was heard\n',
    ]);
  });

  test.each([
    [['-o', 'take.mid'], /take\.wav.*--tempo/u],
    [['-o', 'take.mid', '--tempo', '96', '--bar-one', '9'], /"9".*from 0 to 3\.00/u],
    [['-o', 'take.mid', '--tempo', '96', '--bar-one', 'x'], /"x".*from 0 to 3\.00/u],
    [['--harp', 'H'], /"H"/u],
    [['--tempo', '96'], /"--tempo 96".*-o/u],
    [['--bar-one', '1'], /"--bar-one 1".*-o/u],
  ])('reedplate listen %j says in one line what is wrong', async (words, message) => {
    const { code, out, err } = await run('listen', 'take.wav', ...words);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(message);
    expect(err).toMatch(/^reedplate: [^\n]+\n$/u);
  });

  test('reedplate listen names a file that is no recording', async () => {
    const { code, err } = await runWords(['listen', 'take.json'], { readText: () => '{}' });
    expect(code).toBe(2);
    expect(err).toMatch(/take\.json.*WAV/u);
  });
});

describe('reedplate score of a recording', () => {
  const SONG = ['--form', 'quick-change', '--key', 'G', '--harp', 'C'];

  test('reedplate score hears a recording, and says where it took bar 1 to begin', async () => {
    const { code, out, err } = await run('score', 'take.wav', '--tempo', '120', ...SONG);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(
      /heard by its sound: 4 notes, A4 at .* Hz, bar 1 from second 0\.[45]\d, where the/u,
    );
    expect(out).toContain('of 100');
  });

  test('reedplate score takes the second at which bar 1 begins', async () => {
    const said = await run('score', 'take.wav', '--tempo', '120', '--bar-one', '0.5', ...SONG);
    expect(said.out).toContain('bar 1 from second 0.5\n');
  });

  test('reedplate score refuses words on a recording for a file that says them itself', async () => {
    const { code, err } = await runWords(['score', 'take.json', '--tempo', '96', ...SONG], {
      readText: () => '{"notes":[{"start":0,"duration":960,"pitch":67}]}',
    });
    expect(code).toBe(2);
    expect(err).toMatch(/^reedplate: "--tempo 96" .*a recording alone: take\.json is none\n$/u);
  });

  test('reedplate score asks for the tempo of a recording', async () => {
    const { code, err } = await run('score', 'take.wav', ...SONG);
    expect(code).toBe(2);
    expect(err).toMatch(/^reedplate: .*take\.wav.*--tempo.*\n$/u);
  });
});
