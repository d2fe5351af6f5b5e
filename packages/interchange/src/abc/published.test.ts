import { makeChart } from '@reedplate/form';
import { makeLine } from '@reedplate/line';
import abcjs from 'abcjs';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { published } from '../../../../test/sources/published.js';
import { lines } from '../arbitraries.fixture.js';
import { readAbc } from './read-abc.js';
import { writeAbc } from './write-abc.js';

// A busy machine takes its time over hundreds of files.
vi.setConfig({ testTimeout: 60_000 });

interface TheirEvent {
  readonly cmd: string;
  readonly pitch: number;
  /** Parts of a whole note. */
  readonly start: number;
  readonly duration: number;
}

/** What abcjs 6.7.2 plays, as `start+duration pitch` in ticks. */
function theirNotes(abc: string): readonly string[] {
  const [tune] = abcjs.parseOnly(abc);
  const played = tune?.setUpAudio({ chordsOff: true }) as unknown as {
    readonly tracks: readonly (readonly TheirEvent[])[];
  };
  return played.tracks
    .flat()
    .filter(({ cmd }) => cmd === 'note')
    .map(({ start, duration, pitch }) => [ticks(start), ticks(duration), pitch])
    .sort((a, b) => (a[0] ?? 0) - (b[0] ?? 0) || (a[2] ?? 0) - (b[2] ?? 0))
    .map(([start, duration, pitch]) => `${start}+${duration} ${pitch}`);
}

/** It rounds to six places of a whole note. */
const ticks = (whole: number): number => Math.round((whole * 3840) / 10) * 10;

const ourNotes = (abc: string): readonly string[] =>
  readAbc(abc, { accidentals: 'octave' }).flatMap(({ line }) =>
    line.notes.map(
      ({ start, duration, pitch }) => `${ticks(start / 3840)}+${ticks(duration / 3840)} ${pitch}`,
    ),
  );

// Outside check: abcjs 6.7.2, which holds accidentals in their octave, reads what we write, and
// what we read.
describe('ABC, read by another reader', () => {
  published('abcjs', 'ABC', () => {
    test('writeAbc writes tunes that abcjs plays with the same pitches and times', () => {
      fc.assert(
        fc.property(lines({ unit: 120, chords: false }), ({ tempo: _, title: __, ...head }) => {
          const line = makeLine(head.notes, { metre: head.metre, pickup: head.pickup });
          const abc = writeAbc({ line, key: 'Eb' });
          expect(theirNotes(abc)).toEqual(ourNotes(abc));
        }),
      );
    });
  });

  // Beats divided in every way that is printed. Ties into triplets are left out: abcjs 6.7.2 takes
  // them for longer or shorter than they are, where abc2midi and Verovio agree with us.
  const beats = fc.constantFrom<readonly number[]>(
    ...[[960], [480, 480], [320, 320, 320], [640, 320], [320, 640], [240, 720], [720, 240]],
    ...[
      [160, 160, 160, 480],
      [160, 160, 160, 160, 160, 160],
      [240, 240, 240, 240],
    ],
  );

  published('abcjs', 'ABC', () => {
    test('writeAbc writes triplets in any mixture that abcjs plays with the same times', () => {
      const bars = fc.array(beats, { minLength: 1, maxLength: 16 });
      fc.assert(
        fc.property(bars, fc.constantFrom('C', 'A', 'Eb'), (divided, key) => {
          let start = 0;
          const notes = divided.flat().map((duration, at) => {
            const note = { start, duration, pitch: 60 + ((at * 7) % 24) };
            start += duration;
            return note;
          });
          const abc = writeAbc({ line: makeLine(notes), key });
          expect(theirNotes(abc)).toEqual(
            notes.map(
              (note) => `${ticks(note.start / 3840)}+${ticks(note.duration / 3840)} ${note.pitch}`,
            ),
          );
        }),
      );
    });

    test('writeAbc writes two choruses between repeat signs that abcjs plays twice', () => {
      const chart = makeChart('basic', 'G', { choruses: 2 });
      const starts = [960, 960 + 12 * 3840];
      const notes = starts.map((start) => ({ start, duration: 480, pitch: 67 }));
      const abc = writeAbc({ line: makeLine(notes), chart });
      expect(abc).toContain('|:');
      expect(theirNotes(abc)).toEqual(starts.map((start) => `${start}+480 67`));
    });

    test.each([
      ['pitches', "C, C c c' ^F _B =B ^^G __A"],
      ['lengths', 'A2 A/ A// A3/2 A/4'],
      ['a signature', '[K:Eb] E A B E [K:D] F c'],
      ['accidentals in a bar', '^F F f =f f | F'],
      ['broken rhythm', 'A>B c<d e>>f'],
      ['tuplets', '(3ABc (2AB (3:2:4AABc'],
      ['ties', 'A2-A2 | A4- | A4 | ^F2- | F2 F2'],
      ['repeats', '|: A4 | B4 :|: c4 :|'],
      ['endings', '|: A4 |1 B4 :|2 c4 || d4 |]'],
      ['chords', '[CEG]2 [C2E2]'],
    ])('readAbc reads %s as abcjs does', (_, body) => {
      const abc = `X:1\nM:4/4\nL:1/4\nK:C\n${body}\n`;
      expect(ourNotes(abc)).toEqual(theirNotes(abc));
    });
  });
});
