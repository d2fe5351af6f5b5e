import fc from 'fast-check';
import { parseMidi, writeMidi } from 'midi-file';
import { describe, expect, test, vi } from 'vitest';
import { eventAt, textAt, toTrack } from './track.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const on = (tick: number, noteNumber: number) =>
  eventAt(tick, { type: 'noteOn', channel: 0, noteNumber, velocity: 64 });
const off = (tick: number, noteNumber: number) =>
  eventAt(tick, { type: 'noteOff', channel: 0, noteNumber, velocity: 0 });

describe('toTrack', () => {
  test('toTrack ends a note before another begins at the same tick, and puts texts first', () => {
    const track = toTrack([on(0, 60), on(480, 60), off(480, 60), textAt(480, 'marker', 'C7')]);
    expect(track.map(({ type, deltaTime }) => `${type} ${deltaTime}`)).toEqual([
      ...['noteOn 0', 'marker 480', 'noteOff 0', 'noteOn 0', 'endOfTrack 0'],
    ]);
  });

  test('toTrack ends at a tick, or right after its last event', () => {
    expect(toTrack([], 960).at(-1)?.deltaTime).toBe(960);
    expect(toTrack([on(960, 60)], 480).at(-1)?.deltaTime).toBe(0);
  });

  test('toTrack keeps every event at its tick', () => {
    fc.assert(
      fc.property(fc.array(fc.nat({ max: 100_000 })), (ticks) => {
        let now = 0;
        const times = toTrack(ticks.map((tick) => on(tick, 60))).map(({ deltaTime }) => {
          now += deltaTime;
          return now;
        });
        expect(times.slice(0, -1)).toEqual([...ticks].sort((a, b) => a - b));
      }),
    );
  });

  test('textAt writes text in UTF-8, which the library writes a byte a character', () => {
    const tracks = [toTrack([textAt(0, 'trackName', 'Größe ♭')])];
    const bytes = Uint8Array.from(
      writeMidi({ header: { format: 0, numTracks: 1, ticksPerBeat: 960 }, tracks }),
    );
    expect(new TextDecoder().decode(bytes)).toContain('Größe ♭');
    expect(parseMidi(bytes).tracks.length).toBe(1);
  });
});
