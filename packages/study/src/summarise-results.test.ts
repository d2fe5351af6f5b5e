import { makeEffortModel } from '@reedplate/playability';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type StudyFailure, type StudyResult, studyTune } from './study.js';
import { studyDigest } from './study-digest.js';
import { makeStudySetup } from './study-setup.js';
import { summariseResults } from './summarise-results.js';

const setup = makeStudySetup({ positions: [1, 2] });
const tune = (pitch: number) =>
  JSON.stringify({ key: 'C', line: { notes: [{ start: 0, duration: 960, pitch }] } });
const results = [60, 63, 64, 67, 70].map((pitch, at) => studyTune(tune(pitch), at + 1, setup));
const failure = studyTune('{}', 6, setup);
const other = studyTune('{}', 7, setup);

const own = (model: string) => makeStudySetup({ positions: [1, 2], model });

describe('summariseResults', () => {
  test('summariseResults counts tunes and failures apart, in whatever order they come', () => {
    const summary = summariseResults(results);
    expect(summary).toMatchObject({ model: 'intermediate', tunes: 5, failures: 0 });
    fc.assert(
      fc.property(
        fc.shuffledSubarray([...results, failure, other], { minLength: 7 }),
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

  test('summariseResults says what it read: the digest, and where tempos came from', () => {
    const own = makeStudySetup({ positions: [1, 2], tempo: 90 });
    expect(summariseResults(results)).toMatchObject({
      digest: studyDigest(setup),
      tempos: { tune: 0, setup: 0, default: 5 },
    });
    const slow = [60, 64].map((pitch, at) => studyTune(tune(pitch), at + 1, own));
    expect(summariseResults(slow).tempos).toEqual({ tune: 0, setup: 2, default: 0 });
  });

  test.each([
    ['a tune twice', [...results, results[1]], /each tune once/u],
    ['a failure twice', [...results, failure, failure], /each tune once/u],
    ['a tune missing', results.toSpliced(1, 2), /no tune 2 to 3/u],
    ['the first missing', results.slice(1), /no tune 1/u],
    ['another model', [...results, studyTune(tune(60), 6, own('advanced'))], /one setup/u],
    ['a failure of another setup', [...results, studyTune('{', 6, own('advanced'))], /of digest/u],
  ])('summariseResults refuses results with %s', (_, mixed, message) => {
    expect(() => summariseResults(mixed as typeof results)).toThrow(message);
  });

  test('summariseResults tells models of one id apart by their weights', () => {
    const [light, heavy] = [1, 9].map((bend) => makeEffortModel('beginner', { weights: { bend } }));
    const found = [light, heavy].map((model, at) =>
      studyTune(tune(64), at + 1, makeStudySetup({ positions: [1], ...(model && { model }) })),
    );
    expect(() => summariseResults(found)).toThrow(/of digest/u);
  });

  test('summariseResults of a part is asked for as one', () => {
    expect(summariseResults(results.slice(2), { partial: true }).tunes).toBe(3);
    expect(() => summariseResults([...results, failure, failure], { partial: true })).toThrow(
      /each tune once/u,
    );
  });

  test('summariseResults refuses options that it does not have', () => {
    expect(() => summariseResults(results, { seeds: 1 } as never)).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
    );
  });
});
