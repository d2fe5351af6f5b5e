import { describe, expect, test } from 'vitest';
import { quartersOf } from './read-tempo.js';
import { readXml } from './xml-tree.js';

const read = (element: string) => quartersOf(readXml(element));

const direction = (inside: string): string => `<direction>${inside}</direction>`;
const sound = (tempo: number | string): string => `<sound tempo="${tempo}"/>`;
const metronome = (unit: string, perMinute: number | string, dots = 0): string =>
  `<direction-type><metronome><beat-unit>${unit}</beat-unit>${'<beat-unit-dot/>'.repeat(dots)}<per-minute>${perMinute}</per-minute></metronome></direction-type>`;

describe('quartersOf', () => {
  // MusicXML 4.0, attribute tempo of sound: quarter notes per minute.
  test('quartersOf reads a sound, by itself or in a direction', () => {
    expect(read(sound(96))).toBe(96);
    expect(read(direction(sound(72.5)))).toBe(72.5);
    expect(read(direction(''))).toBeUndefined();
  });

  test.each([
    ['whole', 0, 30, 120],
    ['half', 0, 60, 120],
    ['quarter', 0, 96, 96],
    ['quarter', 1, 80, 120],
    ['eighth', 0, 96, 48],
    ['16th', 0, 400, 100],
  ])(
    'quartersOf reads a metronome mark of a %s with %i dots at %i as %i',
    (unit, dots, at, tempo) => {
      expect(read(direction(metronome(unit, at, dots)))).toBe(tempo);
    },
  );

  test('quartersOf goes by the sound where the mark that is shown says another', () => {
    expect(read(direction(metronome('quarter', 60) + sound(66)))).toBe(66);
    expect(read(direction(metronome('quarter', 60) + sound(0)))).toBe(60);
  });

  test('quartersOf reads the number in "c. 96", and none where there is none', () => {
    expect(read(direction(metronome('quarter', 'c. 96')))).toBe(96);
    for (const mark of [
      metronome('quarter', 'fast'),
      metronome('x', 60),
      metronome('quarter', 0),
    ]) {
      expect(read(direction(mark))).toBeUndefined();
    }
    expect(read(direction(sound('fast') + sound(-1)))).toBeUndefined();
  });
});
