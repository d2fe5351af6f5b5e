import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { makeWarningList, type PieceWarning } from '../warning.js';
import { readTempo } from './read-tempo.js';
import { childrenOf, readXml } from './xml-tree.js';

/** The tempo of parts, each a list of measures, and what was warned of. */
function read(...parts: readonly (readonly string[])[]): {
  readonly tempo: number | undefined;
  readonly warnings: readonly PieceWarning[];
} {
  const warnings = makeWarningList();
  const measures = parts.map((part) =>
    childrenOf(
      readXml(`<part>${part.map((each) => `<measure>${each}</measure>`).join('')}</part>`),
      'measure',
    ),
  );
  return { tempo: readTempo(measures, warnings), warnings: warnings.all() };
}

const direction = (inside: string): string => `<direction>${inside}</direction>`;
const sound = (tempo: number | string): string => `<sound tempo="${tempo}"/>`;
const metronome = (unit: string, perMinute: number | string, dots = 0): string =>
  `<direction-type><metronome><beat-unit>${unit}</beat-unit>${'<beat-unit-dot/>'.repeat(dots)}<per-minute>${perMinute}</per-minute></metronome></direction-type>`;

describe('readTempo', () => {
  // MusicXML 4.0, attribute tempo of sound: quarter notes per minute.
  test('readTempo reads a sound, in a measure or in a direction', () => {
    expect(read([sound(96)])).toEqual({ tempo: 96, warnings: [] });
    expect(read([direction(sound(72.5))])).toEqual({ tempo: 72.5, warnings: [] });
    expect(read([''], ['', sound(80)]).tempo).toBe(80);
  });

  test.each([
    ['whole', 0, 30, 120],
    ['half', 0, 60, 120],
    ['quarter', 0, 96, 96],
    ['quarter', 1, 80, 120],
    ['eighth', 0, 96, 48],
    ['16th', 0, 400, 100],
  ])(
    'readTempo reads a metronome mark of a %s with %i dots at %i as %i',
    (unit, dots, at, tempo) => {
      expect(read([direction(metronome(unit, at, dots))])).toEqual({ tempo, warnings: [] });
    },
  );

  test('readTempo goes by the sound where the mark that is shown says another', () => {
    expect(read([direction(metronome('quarter', 60) + sound(66))])).toEqual({
      tempo: 66,
      warnings: [],
    });
    expect(read([direction(metronome('quarter', 60) + sound(0))]).tempo).toBe(60);
  });

  test('readTempo reads the number in "c. 96", and none where there is none', () => {
    expect(read([direction(metronome('quarter', 'c. 96'))]).tempo).toBe(96);
    for (const mark of [
      metronome('quarter', 'fast'),
      metronome('x', 60),
      metronome('quarter', 0),
    ]) {
      expect(read([direction(mark)])).toEqual({ tempo: undefined, warnings: [] });
    }
    expect(read([sound('fast') + sound(-1)]).tempo).toBeUndefined();
  });

  test('readTempo gives the first and warns of each change, with its bar', () => {
    const { tempo, warnings } = read([sound(60), '', sound(90), sound(60)]);
    expect(tempo).toBe(60);
    expect(warnings).toEqual([
      {
        code: 'tempo-change',
        message: expect.any(String),
        count: 2,
        value: '90',
        where: { bar: 3 },
      },
    ]);
  });

  test('readTempo warns of nothing where all marks of all parts are alike, whatever they are', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.array(fc.array(fc.boolean(), { maxLength: 5 }), { maxLength: 4 }),
        (quarters, marked) => {
          const parts = marked.map((part) => part.map((has) => (has ? sound(quarters) : '')));
          const tempo = marked.flat().includes(true) ? quarters : undefined;
          expect(read(...parts)).toEqual({ tempo, warnings: [] });
        },
      ),
    );
  });
});
