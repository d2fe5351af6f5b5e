import {
  editTuning,
  type Harp,
  makeHarp,
  makeTuning,
  type ReedEdit,
  tuningById,
} from '@reedplate/layout';
import { type Line, makeLine } from '@reedplate/line';
import { midi } from '@reedplate/pitch';
import { type EffortModel, effortModelById, fitHarps as rankHarps } from '@reedplate/playability';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { melodies, models } from '../../playability/src/arbitraries.fixture.js';
import { eventsIn, everyWay, gripsFor } from '../../playability/src/brute-force.fixture.js';
import { type TuningChange, tuningChanges, tuningChangesAsync } from './tuning-changes.js';

vi.setConfig({ testTimeout: 60_000 });

function melody(notes: string): Line {
  return makeLine(
    notes.split(' ').map((name, at) => ({ start: at * 480, duration: 480, pitch: midi(name) })),
  );
}

/** Thousandths that a line costs on a harp, and what it lacks there, by listing every way. */
function listedCost(line: Line, harp: Harp, model: EffortModel, missingCost: number): number {
  const events = eventsIn(line);
  const isThere = ({ pitches }: { readonly pitches: readonly number[] }) =>
    gripsFor(pitches, harp, { level: 'bends' }).length > 0;
  const starts = new Set(events.filter(isThere).map(({ start }) => start));
  const notes = line.notes.filter(({ start }) => starts.has(start));
  const missing = events.length - starts.size;
  const [cheapest] =
    notes.length === 0 ? [] : everyWay({ ...line, notes }, harp, model, { level: 'bends' });
  return (cheapest?.total ?? 0) + missing * missingCost * 1000;
}

const sayEdits = ({ edits }: TuningChange) =>
  edits
    .map(({ hole, breath, by }) => `${hole} ${breath} ${by > 0 ? 'up' : 'down'} ${Math.abs(by)}`)
    .join(', ');

describe('tuningChangesAsync', () => {
  test('tuningChangesAsync gives what tuningChanges gives, and ends with its signal', async () => {
    const corpus = [melody('C4 E4 G4'), melody('F4 A4')];
    const { signal } = new AbortController();
    expect(await tuningChangesAsync(corpus, 'standard', { within: 1, signal })).toEqual(
      tuningChanges(corpus, 'standard', { within: 1 }),
    );
    const away = AbortSignal.abort(new Error('away'));
    await expect(tuningChangesAsync(corpus, 'standard', { signal: away })).rejects.toThrow('away');
    await expect(tuningChangesAsync([], 'standard')).rejects.toMatchObject({ code: 'LINE_EMPTY' });
  });
});

describe('tuningChanges', () => {
  test('tuningChanges lists every change of one reed once, and with two reeds every pair', () => {
    const corpus = [melody('C4 E4 G4')];
    const single = tuningChanges(corpus, 'standard');
    expect(single.changes).toHaveLength(20 * 4);
    const pairs = tuningChanges(corpus, 'standard', { reeds: 2, within: 1 });
    expect(pairs.changes).toHaveLength(40 + ((20 * 19) / 2) * 4);
    expect(new Set(pairs.changes.map(sayEdits)).size).toBe(pairs.changes.length);
    for (const { edits } of pairs.changes) {
      expect(new Set(edits.map(({ hole, breath }) => `${hole} ${breath}`)).size).toBe(edits.length);
    }
  });

  test('tuningChanges gives each change the least cost over the whole corpus, by listing every way', () => {
    const small = fc.array(melodies(fc.integer({ min: 60, max: 72 }), { maxLength: 4 }), {
      minLength: 1,
      maxLength: 3,
    });
    const missingCost = 7;
    fc.assert(
      fc.property(small, models, (corpus, model) => {
        const found = tuningChanges(corpus, 'standard', {
          model,
          level: 'bends',
          within: 1,
          missingCost,
          transpositions: [0, 2],
        });
        const ranked = found.changes.filter((_, at) => at % 9 === 0);
        for (const { edits, cost, missing, effort } of ranked) {
          const harp = makeHarp('C', { tuning: editTuning('standard', edits, { id: 'x' }) });
          const costs = corpus.map((line) => {
            const tries = rankHarps(line, [harp], {
              model,
              level: 'bends',
              transpositions: [0, 2],
            }).harps;
            return Math.min(...tries.map((one) => one.effort + missingCost * one.missing));
          });
          expect(cost).toBeCloseTo(
            costs.reduce((sum, one) => sum + one, 0),
            6,
          );
          expect(cost).toBeCloseTo(effort + missingCost * missing, 6);
        }
        const order = found.changes.map(({ cost }) => cost);
        expect(order).toEqual([...order].sort((a, b) => a - b));
      }),
      { numRuns: 20 },
    );
  });

  test.each([1, 2] as const)(
    'tuningChanges of %i reeds is the full ranking that listing every way of every tuning gives',
    (reeds) => {
      const small = fc.array(melodies(fc.integer({ min: 60, max: 67 }), { maxLength: 3 }), {
        minLength: 1,
        maxLength: 2,
      });
      const tuning = makeTuning({ id: 'small', blow: 'C4 E4', draw: 'D4 G4' });
      const missingCost = 9;
      fc.assert(
        fc.property(small, models, (corpus, model) => {
          const costOf = (edits: readonly ReedEdit[]): number => {
            const changed = edits.length === 0 ? tuning : editTuning(tuning, edits, { id: 'x' });
            const harp = makeHarp(changed.label, { tuning: changed });
            return corpus.reduce(
              (sum, line) => sum + listedCost(line, harp, model, missingCost),
              0,
            );
          };
          const reedsOf = ([1, 2] as const).flatMap((hole) =>
            (['blow', 'draw'] as const).map((breath) => ({ hole, breath })),
          );
          const single = reedsOf.flatMap((reed) =>
            [-1, 1].map((by): ReedEdit => ({ ...reed, by })),
          );
          const pairs = single.flatMap((first, at) =>
            single
              .slice(at + 1)
              .filter(({ hole, breath }) => hole !== first.hole || breath !== first.breath)
              .map((second) => [first, second]),
          );
          const asked = [...single.map((edit) => [edit]), ...(reeds === 1 ? [] : pairs)];
          const expected = asked
            .map((edits) => ({ edits, cost: costOf(edits) }))
            .sort((a, b) => a.cost - b.cost);
          const found = tuningChanges(corpus, tuning, {
            model,
            level: 'bends',
            within: 1,
            reeds,
            missingCost,
          });
          expect(
            found.changes.map(({ edits, cost }) => ({ edits, cost: Math.round(cost * 1000) })),
          ).toEqual(expected);
          expect(Math.round(found.unchanged.cost * 1000)).toBe(costOf([]));
        }),
        { numRuns: 25 },
      );
    },
  );

  test('tuningChanges: the cost of the tuning unchanged is that of all ways on it', () => {
    const line = melody('C4 E4 G4 A4 G4');
    const { unchanged } = tuningChanges([line, line], 'standard', { level: 'bends' });
    const [cheapest] = everyWay(line, makeHarp('C'), effortModelById('intermediate'), {
      level: 'bends',
    });
    expect(unchanged).toMatchObject({ missing: 0, effort: (2 * (cheapest?.total ?? NaN)) / 1000 });
  });

  // What the tunings were made for: common practice, no source.
  test('tuningChanges finds the raised fifth draw reed for major tunes in second position', () => {
    const corpus = [
      melody('G5 F#5 E5 D5 E5 F#5 G5'),
      melody('D5 E5 F#5 G5 A5 G5 F#5 E5 D5 C5 B4 G4'),
    ];
    const { changes } = tuningChanges(corpus, 'standard', { level: 'overbends' });
    expect(sayEdits(changes[0] as TuningChange)).toBe('5 draw up 1');
    expect(changes[0]?.saved).toBeGreaterThan(0);
  });

  test('tuningChanges finds the raised third blow reed for tunes in first position over the low end', () => {
    const corpus = [
      melody('C4 D4 E4 G4 A4 C5 A4 G4 E4 D4 C4'),
      melody('C5 B4 A4 G4 A4 B4 C5 A4 E4'),
    ];
    const { changes } = tuningChanges(corpus, 'standard', { level: 'bends' });
    expect(sayEdits(changes[0] as TuningChange)).toBe('3 blow up 2');
  });

  test('tuningChanges puts what makes things worse last, with a saving below 0', () => {
    const { changes } = tuningChanges([melody('C4 E4 G4')], 'standard', { level: 'natural' });
    expect(changes.at(-1)?.saved).toBeLessThan(0);
    expect(changes.at(-1)?.missing).toBe(1);
  });

  test('tuningChanges begins with any tuning', () => {
    const own = editTuning(tuningById('dorian'), ['1 blow up 1'], { id: 'own' });
    expect(tuningChanges([melody('D4 F4')], own).tuning).toBe('own');
  });

  test.each([
    [[], {}, 'LINE_EMPTY'],
    [[melody('C4'), makeLine([])], {}, 'LINE_EMPTY'],
    [[melody('C4')], { reeds: 3 }, 'NUMBER_RANGE'],
    [[melody('C4')], { within: 0 }, 'NUMBER_RANGE'],
    [[melody('C4')], { missingCost: 0 }, 'NUMBER_RANGE'],
  ])('tuningChanges refuses %j with %j', (corpus, options, code) => {
    expect(() => tuningChanges(corpus, 'standard', options as object)).toThrow(
      expect.objectContaining({ code }),
    );
  });

  test('tuningChanges says which line of the corpus is empty', () => {
    expect(() => tuningChanges([melody('C4'), makeLine([])], 'standard')).toThrow(
      expect.objectContaining({ where: { index: 1 } }),
    );
    expect(() => tuningChanges([], 'standard')).toThrow(/^an empty list holds no note/u);
  });
});
