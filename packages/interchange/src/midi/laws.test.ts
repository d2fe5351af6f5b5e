import { makeLine } from '@reedplate/line';
import { isReedplateError } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { lines, mutations } from '../arbitraries.fixture.js';
import { applySwing, removeSwing } from '../swing.js';
import { readMidi } from './read-midi.js';
import { writeMidi } from './write-midi.js';

// A busy machine takes its time over hundreds of files.
vi.setConfig({ testTimeout: 60_000 });

const anyLine = lines({ unit: 60, chords: true });

describe('laws of MIDI files', () => {
  test('readMidi undoes writeMidi: notes, metre, pickup, tempo and title', () => {
    fc.assert(
      fc.property(anyLine, (line) => {
        const { tempo = 96, ...rest } = line;
        const { title: _, ...read } = readMidi(writeMidi({ line })).line;
        expect({ title: line.title, ...read }).toEqual({ title: line.title, ...rest, tempo });
      }),
    );
  });

  test('readMidi keeps title and key of writeMidi', () => {
    const line = makeLine([{ start: 0, duration: 960, pitch: 67 }], { title: 'Blues à moi' });
    const piece = readMidi(writeMidi({ line, key: 'Ebm' }));
    expect([piece.line.title, piece.key]).toEqual(['Blues à moi', 'Ebm']);
  });

  test('readMidi gives a piece or a typed error for arbitrary and mutated bytes', () => {
    const line = makeLine(
      [67, 70, 72].map((pitch, at) => ({ start: at * 960, duration: 900, pitch })),
    );
    const bytes = fc.oneof(fc.uint8Array({ maxLength: 200 }), mutations(writeMidi({ line })));
    fc.assert(
      fc.property(bytes, (wild) => {
        try {
          expect(readMidi(wild).line.notes.length).toBeGreaterThanOrEqual(0);
        } catch (error) {
          expect(isReedplateError(error) && error.code).toBe('MIDI_MALFORMED');
        }
      }),
      { numRuns: 500 },
    );
  });
});

describe('laws of feel', () => {
  const ratios = fc.double({ min: 1, max: 3.5, noNaN: true });

  test('removeSwing undoes applySwing to a tick', () => {
    fc.assert(
      fc.property(anyLine, ratios, (line, ratio) => {
        const { notes } = removeSwing(applySwing(line, { ratio }), { ratio });
        for (const [at, note] of line.notes.entries()) {
          expect(Math.abs((notes[at]?.start ?? -9) - note.start)).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  test('applySwing keeps the order of notes, the beats, and the pitches', () => {
    fc.assert(
      fc.property(anyLine, ratios, (line, ratio) => {
        const laid = applySwing(line, { ratio });
        expect(laid.notes.map(({ pitch }) => pitch)).toEqual(line.notes.map(({ pitch }) => pitch));
        for (const [at, { start }] of line.notes.entries()) {
          const isOnBeat = (start - line.pickup) % 960 === 0;
          if (isOnBeat) expect(laid.notes[at]?.start).toBe(start);
        }
      }),
    );
  });
});
