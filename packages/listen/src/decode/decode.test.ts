import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Frame } from '../frames/frames.js';
import { decode } from './decode.js';

const PITCHES = [60, 61, 62];
const SETTING = { loudest: -10, offset: 0 };
const sounding = (pitch: number, rise = 0): Frame => ({
  candidates: [{ pitch, weight: 1 }],
  clarity: 0.98,
  level: -10,
  rise,
});
const QUIET: Frame = { candidates: [], clarity: 0, level: -90, rise: 0 };
const times = (count: number, frame: Frame): readonly Frame[] =>
  Array.from({ length: count }, () => frame);
const notesIn = (frames: readonly Frame[]) =>
  decode(frames, PITCHES, SETTING).map(({ note }) => note);

describe('decode', () => {
  test('decode finds silence, a note, and silence', () => {
    const frames = [...times(10, QUIET), ...times(20, sounding(61)), ...times(10, QUIET)];
    expect(notesIn(frames)).toEqual([
      ...Array(10).fill(-1),
      ...Array(20).fill(1),
      ...Array(10).fill(-1),
    ]);
  });

  test('decode passes over a frame that was heard an octave off', () => {
    const frames = [...times(10, sounding(60)), sounding(72), ...times(10, sounding(60))];
    expect(new Set(notesIn(frames))).toEqual(new Set([0]));
  });

  test('decode begins a note anew where the loudness rises, and only there', () => {
    const attacks = (rise: number): number => {
      const frames = [...times(20, sounding(60)), sounding(60, rise), ...times(20, sounding(60))];
      const moments = decode(frames, PITCHES, SETTING);
      return moments.filter(({ isAttack }, at) => isAttack && moments[at - 1]?.isAttack !== true)
        .length;
    };
    expect(attacks(0)).toBe(1);
    expect(attacks(12)).toBe(2);
  });

  test('decode gives one moment a frame, each silence or a pitch that was asked for', () => {
    const frame = fc.record({
      candidates: fc.array(
        fc.record({
          pitch: fc.double({ min: 40, max: 90, noNaN: true }),
          weight: fc.constant(0.5),
        }),
        { maxLength: 2 },
      ),
      clarity: fc.double({ min: 0, max: 1, noNaN: true }),
      level: fc.double({ min: -120, max: 0, noNaN: true }),
      rise: fc.double({ min: 0, max: 60, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(frame, { maxLength: 40 }), (frames) => {
        const moments = decode(frames, PITCHES, SETTING);
        expect(moments).toHaveLength(frames.length);
        for (const { note } of moments) expect([-1, 0, 1, 2]).toContain(note);
      }),
    );
  });
});
