import { createRequire } from 'node:module';
import { makeChart } from '@reedplate/form';
import fc from 'fast-check';
import { parseMidi } from 'midi-file';
import { describe, expect, test, vi } from 'vitest';
import { published } from '../../../../test/sources/published.js';
import { lines } from '../arbitraries.fixture.js';
import { writeMidi } from './write-midi.js';

// A busy machine takes its time over hundreds of files.
vi.setConfig({ testTimeout: 60_000 });

// The package is CommonJS without a name that Node's ESM loader can find.
const { Midi } = createRequire(import.meta.url)('@tonejs/midi') as typeof import('@tonejs/midi');

// Outside check: other libraries read what we write (@tonejs/midi 2.0.28, midi-file 1.2.4).
describe('MIDI files, read by other libraries', () => {
  published('midi-readers', 'MIDI files', () => {
    test('writeMidi writes notes that @tonejs/midi reads with the same pitches and times', () => {
      fc.assert(
        fc.property(lines({ unit: 40, chords: true }), (line) => {
          const { tracks, header } = new Midi(writeMidi({ line }));
          const [notes] = tracks.map((track) => track.notes).filter(({ length }) => length > 0);
          const theirs = notes?.map(({ ticks, durationTicks, midi }) => [
            ticks,
            durationTicks,
            midi,
          ]);
          const ours = line.notes.map(({ start, duration, pitch }) => [start, duration, pitch]);
          expect(header.ppq).toBe(960);
          expect(theirs?.sort(byNumbers)).toEqual(ours.sort(byNumbers));
        }),
      );
    });
  });

  published('midi-readers', 'MIDI files', () => {
    test('writeMidi writes program, metre, tempo, key and a marker for each chord', () => {
      const chart = makeChart('basic', 'A', { tempo: 120 });
      const [line] = fc.sample(lines({ unit: 480, chords: false }), { seed: 7, numRuns: 1 });
      if (line === undefined) throw new Error('no line');
      const head = { metre: '4/4', pickup: 0, notes: line.notes } as const;
      const { header, tracks } = parseMidi(writeMidi({ line: head, chart }));
      const events = tracks.flat();
      expect(header).toMatchObject({ format: 1, numTracks: 2, ticksPerBeat: 960 });
      expect(events).toContainEqual(expect.objectContaining({ programNumber: 22 }));
      expect(events).toContainEqual(
        expect.objectContaining({ type: 'timeSignature', numerator: 4, denominator: 4 }),
      );
      expect(events).toContainEqual(expect.objectContaining({ microsecondsPerBeat: 500_000 }));
      expect(events).toContainEqual(expect.objectContaining({ type: 'keySignature', key: 3 }));
      const markers = events.flatMap((event) => (event.type === 'marker' ? [event.text] : []));
      expect(markers).toEqual(['A7', 'D7', 'A7', 'E7', 'D7', 'A7', 'E7']);
    });
  });
});

function byNumbers(a: readonly number[], b: readonly number[]): number {
  for (const [at, value] of a.entries()) {
    const difference = value - (b[at] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}
