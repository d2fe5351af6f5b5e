import { makeHarp, makeTuning, TUNINGS, tuningById } from '@reedplate/layout';
import { type Line, makeLine } from '@reedplate/line';
import { TWELVE_KEYS, transposeKey } from '@reedplate/pitch';
import { fitHarps as rankHarps } from '@reedplate/playability';
import { harpKeyOf } from '@reedplate/position';
import fc from 'fast-check';
import { mean } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { melodies } from '../../playability/src/arbitraries.fixture.js';
import { type StudyFailure, type StudyResult, studyTune } from './study.js';
import { studyDigest } from './study-digest.js';
import { makeStudySetup } from './study-setup.js';
import { type StudyFigure, summariseStudy } from './study-summary.js';
import { readStudyTune } from './study-tune.js';

const line = makeLine(
  [67, 71, 74].map((pitch, at) => ({ start: at * 960, duration: 960, pitch })),
  { title: 'Three' },
);
const text = (tune: object) => JSON.stringify(tune);

function result(tune: object, ...rest: Parameters<typeof makeStudySetup>): StudyResult {
  const found = studyTune(text(tune), 1, makeStudySetup(...rest));
  if ('error' in found) throw new Error(found.error.message);
  return found;
}

describe('studyTune', () => {
  test('studyTune asks every tuning in every position at every level, in order', () => {
    const setup = {
      tunings: ['standard', 'natural-minor'],
      positions: [1, 2],
      levels: ['natural', 'bends'],
    } as const;
    const { cells, number, title, id, events, model } = result({ id: 'a1', key: 'G', line }, setup);
    expect({ number, title, id, events, model }).toEqual({
      number: 1,
      title: 'Three',
      id: 'a1',
      events: 3,
      model: 'intermediate',
    });
    expect(
      cells.map(({ tuning, position, level, harp }) => `${tuning} ${position} ${level} ${harp}`),
    ).toEqual([
      'standard 1 natural G',
      'standard 1 bends G',
      'standard 2 natural C',
      'standard 2 bends C',
      'natural-minor 1 natural Dm',
      'natural-minor 1 bends Dm',
      'natural-minor 2 natural Gm',
      'natural-minor 2 bends Gm',
    ]);
  });

  test('studyTune gives each cell what fit gives, in the best octave', () => {
    fc.assert(
      fc.property(
        melodies(fc.integer({ min: 40, max: 100 })),
        fc.constantFrom(...TUNINGS),
        fc.integer({ min: 1, max: 12 }),
        (tune: Line, tuning, position) => {
          const [cell] = result(
            { key: 'A', line: tune },
            { tunings: [tuning.id], positions: [position], octaves: [-2, -1, 0, 1] },
          ).cells;
          const harp = makeHarp(harpKeyOf('A', position, { tuning }), { tuning });
          const [best] = rankHarps(tune, [harp], {
            transpositions: [-24, -12, 0, 12],
            count: 1,
          }).harps;
          expect(cell).toEqual({
            tuning: tuning.id,
            position,
            level: 'bends',
            harp: harp.key,
            octave: (best?.transposition ?? NaN) / 12,
            playableShare: best?.playableShare,
            effortPerEvent: best?.effortPerEvent,
            bends: best?.bends,
            overbends: best?.overbends,
          });
        },
      ),
      { numRuns: 50 },
    );
  });

  test('studyTune gives a tune the same figures in all keys, if octaves enough are allowed', () => {
    const octaves = [-3, -2, -1, 0, 1, 2, 3];
    const figures = TWELVE_KEYS.map((_, semitones) => {
      const moved = {
        ...line,
        notes: line.notes.map((note) => ({ ...note, pitch: note.pitch + semitones })),
      };
      const inKey = transposeKey(TWELVE_KEYS[0] as (typeof TWELVE_KEYS)[number], semitones).name;
      return result({ key: inKey, line: moved }, { positions: [1, 2, 3], octaves }).cells.map(
        ({ effortPerEvent, playableShare }) => [effortPerEvent, playableShare],
      );
    });
    for (const found of figures) expect(found).toEqual(figures[0]);
  });

  test.each([
    ['{', 'JSON_MALFORMED'],
    ['7', 'STUDY_INVALID'],
    ['null', 'STUDY_INVALID'],
    [text({ key: 'G' }), 'STUDY_INVALID'],
    [text({ key: 'H', line }), 'KEY_UNKNOWN'],
    [text({ key: 'G', line: { notes: [{ start: 0 }] } }), 'LINE_INVALID'],
    [text({ key: 'G', line: { notes: [] } }), 'LINE_EMPTY'],
    [text({ key: 'G', line: { notes: [], metre: '4/5' } }), 'METRE_UNKNOWN'],
  ])('studyTune reports %s and its line, and throws nothing', (bad, code) => {
    const found = studyTune(bad, 41, makeStudySetup()) as StudyFailure;
    expect(found).toMatchObject({ number: 41, error: { code } });
    expect(found.error.message.length).toBeGreaterThan(0);
  });

  test('studyTune keeps the id of a tune that cannot be read, as text or as a number', () => {
    const setup = makeStudySetup();
    const failed = studyTune('{"id":7,"key":"H","line":{}}', 2, setup);
    expect(failed).toMatchObject({ number: 2, id: 7, digest: studyDigest(setup) });
    expect(studyTune('{"id":"a","key":"G"}', 2, setup)).toMatchObject({ id: 'a' });
    expect(studyTune('{"id":{}}', 2, setup)).not.toHaveProperty('id');
    expect(result({ id: 0, key: 'G', line }).id).toBe(0);
  });

  test('studyTune states the tempo that it counted with, and where it came from', () => {
    const own = { key: 'G', line: { ...line, tempo: 240 } };
    expect(result({ key: 'G', line }).tempo).toEqual({ beats: 100, from: 'default' });
    expect(result(own).tempo).toEqual({ beats: 240, from: 'tune' });
    const asked = result(own, { tempo: 60 });
    expect(asked.tempo).toEqual({ beats: 60, from: 'setup' });
    expect(asked.cells).toEqual(result({ key: 'G', line: { ...line, tempo: 60 } }).cells);
  });

  test('studyTune copies the family of a tune', () => {
    expect(result({ key: 'G', line, family: 'f1' }).family).toBe('f1');
    expect(result({ key: 'G', line, family: 1 })).not.toHaveProperty('family');
  });

  test('studyTune reports any text, and throws nothing', () => {
    const setup = makeStudySetup({ positions: [1] });
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (any) => {
        expect(studyTune(any, 1, setup)).toHaveProperty('error.code');
      }),
    );
  });

  test('studyTune with any JSON in place of any part of a tune finds cells or a typed error', () => {
    const setup = makeStudySetup({ positions: [1, 2] });
    const whole = { id: 'a', key: 'G', line };
    const paths = fc.constantFrom<readonly string[]>(
      ...[['id'], ['key'], ['line'], ['line', 'notes'], ['line', 'metre'], ['line', 'tempo']],
      ...[
        ['line', 'pickup'],
        ['line', 'title'],
        ['line', 'notes', '0'],
      ],
      ...[
        ['line', 'notes', '0', 'start'],
        ['line', 'notes', '0', 'pitch'],
      ],
      ...[['line', 'notes', '0', 'duration'], ['__proto__'], ['constructor']],
    );
    let refused = 0;
    fc.assert(
      fc.property(paths, fc.jsonValue(), (path, value) => {
        const copy = JSON.parse(JSON.stringify(whole));
        const last = path.at(-1) as string;
        path.slice(0, -1).reduce((at, name) => at[name], copy)[last] = value;
        const found = studyTune(JSON.stringify(copy), 3, setup);
        expect(found.number).toBe(3);
        if ('error' in found) {
          refused += 1;
          expect(found.error.code).toMatch(/^[A-Z]+(?:_[A-Z]+)+$/u);
        } else expect(found.cells).toHaveLength(2);
      }),
      { numRuns: 500 },
    );
    expect(refused).toBeGreaterThan(100);
  });

  test('readStudyTune says of a tune without a key that it has none, and which it is', () => {
    const message = (tune: object) => {
      const found = studyTune(text(tune), 1, makeStudySetup());
      return 'error' in found ? found.error.message : '';
    };
    expect(message({ id: 'take.mid', line })).toMatch(
      /^"take\.mid" .* a key, from which positions/u,
    );
    expect(message({ key: null, line })).toMatch(/a key, from which positions/u);
    expect(message({ key: 'G' })).toMatch(/an object with key and line/u);
  });

  test('readStudyTune leaves an id that is neither text nor a number out', () => {
    expect(readStudyTune(text({ id: [7], key: 'G', line }))).not.toHaveProperty('id');
  });
});

describe('makeStudySetup', () => {
  test('makeStudySetup survives a round trip through JSON', () => {
    const setup = makeStudySetup({ tunings: ['dorian'], positions: [12] });
    expect(makeStudySetup(JSON.parse(JSON.stringify(setup)))).toEqual(setup);
  });

  test('makeStudySetup takes a tuning of one’s own, and studyTune studies it', () => {
    const own = makeTuning({ id: 'own', blow: 'C4 E4 G4', draw: 'D4 F4 A4' });
    const setup = makeStudySetup({ tunings: ['standard', own], positions: [1] });
    expect(makeStudySetup(JSON.parse(JSON.stringify(setup)))).toEqual(setup);
    const found = studyTune(text({ key: 'C', line }), 1, setup);
    expect('cells' in found && found.cells.map(({ tuning }) => tuning)).toEqual([
      'standard',
      'own',
    ]);
  });

  test.each([
    [{ tunings: [] }, 'STUDY_INVALID'],
    [{ tunings: 'standard' }, 'STUDY_INVALID'],
    [{ tunings: ['dorian', tuningById('dorian')] }, 'STUDY_INVALID'],
    [{ tunings: [{ id: 'own' }] }, 'TUNING_INVALID'],
    [{ tunings: ['standard', 'standard'] }, 'STUDY_INVALID'],
    [{ tunings: ['standrad'] }, 'TUNING_UNKNOWN'],
    [{ positions: [13] }, 'NUMBER_RANGE'],
    [{ levels: ['bend'] }, 'OPTION_UNKNOWN'],
    [{ octaves: [0.5] }, 'NUMBER_RANGE'],
    [{ model: 'expert' }, 'MODEL_UNKNOWN'],
    [{ tempo: 0 }, 'NUMBER_RANGE'],
  ])('makeStudySetup refuses %j', (spec, code) => {
    expect(() => makeStudySetup(spec as object)).toThrow(expect.objectContaining({ code }));
  });
});

/** The means of all draws of as many tunes as there are, with putting back, rising. */
function everyDraw(values: readonly number[]): number[] {
  const draws = values.reduce<readonly (readonly number[])[]>(
    (drawn) => drawn.flatMap((draw) => values.map((value) => [...draw, value])),
    [[]],
  );
  return draws.map((draw) => mean([...draw])).sort((a, b) => a - b);
}

/** A figure with its interval, NaN where there is none. */
const intervalOf = (figure: StudyFigure | null | undefined) => ({
  ...{ value: figure?.value ?? NaN, low: figure?.low ?? NaN, high: figure?.high ?? NaN },
});

describe('summariseStudy', () => {
  const tunes = (efforts: readonly number[]): StudyResult[] =>
    efforts.map((effortPerEvent, at) => {
      const base = result({ key: 'G', line }, { positions: [2] });
      const cells = base.cells.map((cell) => ({
        ...cell,
        effortPerEvent,
        playableShare: effortPerEvent > 0 ? 1 : 0.5,
      }));
      return { ...base, number: at + 1, cells };
    });

  test('summariseStudy gives the mean with an interval that holds it, the same for a seed', () => {
    const results = tunes([1, 2, 3, 4, 0]);
    const [cell] = summariseStudy(results, { seed: 7 });
    expect(cell).toMatchObject({ tuning: 'standard', position: 2, level: 'bends', tunes: 5 });
    expect(cell?.wholeShare.value).toBe(0.8);
    const { value, low, high } = intervalOf(cell?.effortPerEvent);
    expect(value).toBe(2.5);
    expect(low).toBeGreaterThanOrEqual(1);
    expect(low).toBeLessThan(2.5);
    expect(high).toBeGreaterThan(2.5);
    expect(high).toBeLessThanOrEqual(4);
    expect(summariseStudy(results, { seed: 7 })).toEqual([cell]);
    expect(summariseStudy(results, { seed: 8 })).not.toEqual([cell]);
  });

  test('summariseStudy: the bootstrap interval of a mean is near that of the normal law, for many tunes', () => {
    // Standard error of a mean: s / sqrt(n); 1.96 of them either way hold 95 % (textbook).
    const efforts = Array.from({ length: 400 }, (_, at) => 1 + (at % 20));
    const [cell] = summariseStudy(tunes(efforts), { resamples: 4000 });
    const mean = efforts.reduce((sum, effort) => sum + effort, 0) / efforts.length;
    const spread = Math.sqrt(
      efforts.reduce((sum, effort) => sum + (effort - mean) ** 2, 0) / efforts.length,
    );
    const half = (1.96 * spread) / Math.sqrt(efforts.length);
    const { low, high } = intervalOf(cell?.effortPerEvent);
    expect(Math.abs(mean - half - low)).toBeLessThan(half / 8);
    expect(Math.abs(mean + half - high)).toBeLessThan(half / 8);
  });

  test('summariseStudy draws the interval that listing every draw of a few tunes gives', () => {
    const few = fc.array(fc.integer({ min: 1, max: 50 }), { minLength: 2, maxLength: 5 });
    fc.assert(
      fc.property(few, fc.integer({ min: 1, max: 1000 }), (efforts, seed) => {
        const draws = everyDraw(efforts);
        const [cell] = summariseStudy(tunes(efforts), { resamples: 10_000, seed });
        const { value, low, high } = intervalOf(cell?.effortPerEvent);
        expect(value).toBeCloseTo(mean(efforts), 9);
        // What was drawn ten thousand times lies that near to what is true.
        const at = (share: number): number => draws[Math.floor(share * draws.length)] ?? NaN;
        const [lowFrom, lowTo, highFrom, highTo] = [0.019, 0.031, 0.969, 0.981].map(at);
        expect(low).toBeGreaterThanOrEqual((lowFrom ?? NaN) - 1e-9);
        expect(low).toBeLessThanOrEqual((lowTo ?? NaN) + 1e-9);
        expect(high).toBeGreaterThanOrEqual((highFrom ?? NaN) - 1e-9);
        expect(high).toBeLessThanOrEqual((highTo ?? NaN) + 1e-9);
      }),
      { numRuns: 25 },
    );
  });

  test('summariseStudy: figures are those of simple-statistics over the tunes playable whole', () => {
    const setup = makeStudySetup({ positions: [1, 2, 12], levels: ['natural', 'bends'] });
    const scales = Array.from({ length: 9 }, (_, up) => {
      const notes = [0, 2, 4, 5, 7, 9, 10].map((step, at) => ({
        start: at * 480,
        duration: 480,
        pitch: 62 + ((step + up * 5) % 14),
      }));
      return studyTune(text({ key: 'D', line: { notes } }), up + 1, setup) as StudyResult;
    });
    for (const [at, cell] of summariseStudy(scales).entries()) {
      const cells = scales.map(({ cells: all, events }) => ({ ...all[at], events }));
      const whole = cells.filter(({ playableShare }) => playableShare === 1);
      expect(cell.wholeShare.value).toBeCloseTo(whole.length / cells.length, 12);
      const meanOf = (figures: readonly number[]) =>
        figures.length === 0 ? undefined : mean([...figures]);
      expect(cell.effortPerEvent?.value).toBe(
        meanOf(whole.map(({ effortPerEvent = NaN }) => effortPerEvent)),
      );
      expect(cell.bendsPerHundred?.value).toBe(
        meanOf(whole.map(({ bends = NaN, events }) => (100 * bends) / events)),
      );
    }
  });

  test('summariseStudy says null where no tune can be played whole', () => {
    expect(summariseStudy(tunes([0, 0]))[0]).toMatchObject({
      effortPerEvent: null,
      bendsPerHundred: null,
      // Wilson's interval of none of two: z² / (2 + z²).
      wholeShare: { value: 0, low: 0, high: expect.closeTo(0.65762, 5) },
    });
  });

  test('summariseStudy gives no interval from one tune', () => {
    const [cell] = summariseStudy(tunes([2]));
    expect(cell?.effortPerEvent).toEqual({ value: 2, low: null, high: null });
    expect(cell?.wholeShare).toEqual({ value: 1, low: null, high: null });
    expect(summariseStudy(tunes([2, 0]))[0]?.effortPerEvent).toMatchObject({ low: null });
  });

  test('summariseStudy gives the same whatever order results come in', () => {
    const results = tunes([1, 2, 3, 4, 5, 6]);
    fc.assert(
      fc.property(fc.shuffledSubarray(results, { minLength: 6 }), (shuffled) => {
        expect(summariseStudy(shuffled)).toEqual(summariseStudy(results));
      }),
    );
  });

  test('summariseStudy refuses no results, results of different setups, and wrong options', () => {
    const failsWith = (code: string) => expect.objectContaining({ code });
    expect(() => summariseStudy([])).toThrow(failsWith('STUDY_INVALID'));
    expect(() => summariseStudy(tunes([1]), { resamples: 10 })).toThrow(failsWith('NUMBER_RANGE'));
    expect(() => summariseStudy(tunes([1]), { seed: 0.5 })).toThrow(failsWith('NUMBER_RANGE'));
  });

  test('summariseStudy refuses results of another model, position or number of cells, and says which', () => {
    const first = result({ key: 'G', line }, { positions: [2] });
    for (const [spec, message] of [
      [{ positions: [2], model: 'advanced' }, /"advanced" .* \(here intermediate\)/u],
      [{ positions: [3] }, /"standard 3 bends" .* \(here standard 2 bends\)/u],
      [{ positions: [2, 3] }, /"standard 3 bends" .* \(here the end\)/u],
    ] as const) {
      const other = result({ key: 'G', line }, spec);
      expect(() => summariseStudy([first, other])).toThrow(message);
    }
    const both = result({ key: 'G', line }, { positions: [2, 3] });
    expect(() => summariseStudy([both, first])).toThrow(/"the end" .* \(here standard 3 bends\)/u);
  });
});
