import { makeHarp, soundingsOfPitch, TECHNIQUE_LEVELS } from '@reedplate/layout';
import { degreeAbove, midi, parseScale, scaleNames, toPitchClass } from '@reedplate/pitch';
import { positionOf } from '@reedplate/position';
import { formatSounding } from '@reedplate/tab';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { harps, keys, levels } from '../../shared/arbitraries.fixture.js';
import { scaleReport } from './report.js';

const scales = fc.constantFrom(...scaleNames());

describe('scaleReport', () => {
  test('scaleReport has the notes of the scale and no others, rising', () => {
    fc.assert(
      fc.property(harps, keys, scales, (harp, key, scale) => {
        const { notes } = scaleReport(harp, key, scale);
        const semitones = new Set(parseScale(scale).semitones);
        const pitches = notes.map(({ note }) => midi(note));
        for (const pitch of pitches) {
          expect(semitones.has(toPitchClass(pitch - key.pitchClass))).toBe(true);
        }
        expect(pitches).toEqual([...pitches].sort((a, b) => a - b));
      }),
      { numRuns: 40 },
    );
  });

  test('scaleReport gives each note its degree, and every way the level allows to sound it', () => {
    fc.assert(
      fc.property(harps, keys, levels, (harp, key, level) => {
        for (const { note, degree, tabs } of scaleReport(harp, key, 'blues', { level }).notes) {
          expect(degree).toBe(degreeAbove(toPitchClass(midi(note)), key.pitchClass));
          const known = soundingsOfPitch(harp, midi(note), { level });
          expect([...tabs].sort()).toEqual(
            known.map((sounding) => formatSounding(sounding)).sort(),
          );
        }
      }),
      { numRuns: 40 },
    );
  });

  test('scaleReport runs up and down alike, and names in brackets what has no tab', () => {
    fc.assert(
      fc.property(harps, keys, levels, (harp, key, level) => {
        const { run, notes } = scaleReport(harp, key, 'major pentatonic', { level });
        const tabsOf = new Map(notes.map(({ note, tabs }) => [`(${note})`, tabs]));
        for (const step of run) {
          if (step.startsWith('(')) expect(tabsOf.get(step)).toEqual([]);
          else expect(notes.some(({ tabs }) => tabs.includes(step))).toBe(true);
        }
        expect(run.length % 2).toBe(1);
      }),
      { numRuns: 40 },
    );
  });

  test('scaleReport covers no less at a higher level', () => {
    fc.assert(
      fc.property(harps, keys, scales, (harp, key, scale) => {
        const { levels: fits } = scaleReport(harp, key, scale);
        const coverage = TECHNIQUE_LEVELS.map((level) => fits[level].coverage);
        expect(coverage).toEqual([...coverage].sort((a, b) => a - b));
      }),
      { numRuns: 40 },
    );
  });

  test('scaleReport says the position, and the scale by its own name', () => {
    const harp = makeHarp('C');
    const report = scaleReport(harp, 'D', 'dorian');
    expect(report).toMatchObject({ position: positionOf(harp, 'D'), key: 'D', scale: 'dorian' });
    expect(scaleReport(harp, 'G', 'blues').scale).toBe('minor blues');
  });

  test('scaleReport of third position has the Dorian scale as natural notes in the middle octave', () => {
    const { notes } = scaleReport(makeHarp('C'), 'D', 'dorian', { level: 'natural' });
    const middle = notes.filter(({ note }) => midi(note) >= 74 && midi(note) <= 86);
    expect(middle.map(({ tabs }) => tabs[0])).toEqual([
      '-4',
      '+5',
      '-5',
      '+6',
      '-6',
      '-7',
      '+7',
      '-8',
    ]);
  });
});
