import { makeTuning, readTuning, TUNINGS, tuningById } from '@reedplate/layout';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readTemperamentWord } from './read-temperament.js';
import { readTuningList, readTuningWord } from './read-tuning.js';

const OWN = makeTuning({ id: 'own', blow: 'C4 E4 G4', draw: 'D4 G4 B4' });
const FILES: ReadonlyMap<string, string> = new Map([
  ['own.json', JSON.stringify(OWN)],
  ['rows.json', '{"id":"rows","blow":"C4 E4","draw":"D4 G4"}'],
  ['half.json', '{"id":"half","blow":"C4 E4"}'],
  ['just.scl', 'no notes\n0\n'],
  [
    'twelve.scl',
    `! t\ntwelve\n12\n${Array.from({ length: 12 }, (_, at) => `${(at + 1) * 100}.`).join('\n')}\n`,
  ],
]);
const terminal = {
  readText: (path: string): string => {
    const text = FILES.get(path);
    if (text === undefined) throw new Error(`read ${path}`);
    return text;
  },
};

describe('readTuningWord', () => {
  test('readTuningWord gives each tuning of the catalogue by its id, and reads no file for it', () => {
    for (const tuning of TUNINGS) expect(readTuningWord(tuning.id, terminal)).toBe(tuning);
  });

  test('readTuningWord reads a tuning as JSON.stringify writes it, and one in rows', () => {
    expect(readTuningWord('own.json', terminal)).toEqual(OWN);
    expect(readTuningWord('rows.json', terminal).holes).toHaveLength(2);
  });

  test('readTuningWord reads every tuning of the catalogue from a file alike', () => {
    fc.assert(
      fc.property(fc.constantFrom(...TUNINGS), (tuning) => {
        const readText = () => JSON.stringify(tuning);
        expect(readTuningWord('./any', { readText })).toEqual(readTuning(tuning));
      }),
    );
  });

  test('readTuningWord says in which file a row is missing', () => {
    expect(() => readTuningWord('half.json', terminal)).toThrow(
      expect.objectContaining({
        code: 'TUNING_INVALID',
        where: expect.objectContaining({ file: 'half.json' }),
      }),
    );
  });
});

describe('readTuningList', () => {
  test('readTuningList reads ids and files in the order they stand', () => {
    const ids = readTuningList('dorian, own.json,standard', terminal).map(({ id }) => id);
    expect(ids).toEqual(['dorian', 'own', 'standard']);
  });

  test('readTuningList gives the catalogue for all, which is then no id', () => {
    expect(readTuningList(' all ', terminal)).toBe(TUNINGS);
    expect(() => readTuningList('all,standard', terminal)).toThrow(
      expect.objectContaining({ code: 'TUNING_UNKNOWN', value: 'all' }),
    );
  });

  test('readTuningList names the one that is wrong', () => {
    expect(() => readTuningList('standard,dorain', terminal)).toThrow(
      expect.objectContaining({ value: 'dorain', nearest: 'dorian' }),
    );
    expect(readTuningList('dorian', terminal)).toEqual([tuningById('dorian')]);
  });
});

describe('readTemperamentWord', () => {
  test('readTemperamentWord gives one of the catalogue, or that of a Scala file', () => {
    expect(readTemperamentWord('equal', terminal).id).toBe('equal');
    expect(readTemperamentWord('twelve.scl', terminal).name).toBe('twelve');
  });

  test('readTemperamentWord says in which file a scale is not understood', () => {
    expect(() => readTemperamentWord('just.scl', terminal)).toThrow(
      expect.objectContaining({
        code: 'SCALA_SYNTAX',
        where: expect.objectContaining({ file: 'just.scl' }),
      }),
    );
  });

  test('readTemperamentWord says which of the catalogue was meant', () => {
    expect(() => readTemperamentWord('equla', terminal)).toThrow(
      expect.objectContaining({ code: 'TEMPERAMENT_UNKNOWN', nearest: 'equal' }),
    );
  });
});
