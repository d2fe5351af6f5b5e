import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type StudyFailure, type StudyResult, studyTune } from './study.js';
import { makeStudySetup } from './study-setup.js';
import { summariseResults } from './summarise-results.js';

const setup = makeStudySetup({ positions: [1, 2] });
const tune = (pitch: number) =>
  JSON.stringify({ key: 'C', line: { notes: [{ start: 0, duration: 960, pitch }] } });
const results = [60, 63, 64, 67, 70].map((pitch, at) => studyTune(tune(pitch), at + 1, setup));
const failure = studyTune('{}', 9, setup);

describe('summariseResults', () => {
  test('summariseResults counts tunes and failures apart, in whatever order they come', () => {
    const summary = summariseResults(results);
    expect(summary).toMatchObject({ model: 'intermediate', tunes: 5, failures: 0 });
    fc.assert(
      fc.property(
        fc.shuffledSubarray([...results, failure, failure], { minLength: 7 }),
        (shuffled: readonly (StudyResult | StudyFailure)[]) => {
          const { tunes, failures, cells } = summariseResults(shuffled);
          expect([tunes, failures]).toEqual([5, 2]);
          expect(cells.map(({ tuning, position }) => [tuning, position])).toEqual(
            summary.cells.map(({ tuning, position }) => [tuning, position]),
          );
        },
      ),
    );
  });

  test('summariseResults uses each result once, and takes a generator', () => {
    let taken = 0;
    function* once(): Generator<StudyResult | StudyFailure> {
      for (const result of results) {
        taken += 1;
        yield result;
      }
    }
    expect(summariseResults(once())).toEqual(summariseResults(results));
    expect(taken).toBe(results.length);
  });

  test.each([[[]], [[failure]]])(
    'summariseResults refuses %j, in which no tune was read',
    (none) => {
      expect(() => summariseResults(none)).toThrow(
        expect.objectContaining({ code: 'STUDY_INVALID' }),
      );
    },
  );

  test('summariseResults refuses options that it does not have', () => {
    expect(() => summariseResults(results, { seeds: 1 } as never)).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
    );
  });
});
