import { describe, expect, it } from 'vitest';
import { FAULT_CODES, faultOf } from './faults.js';
import { bestReading, chargeOf, type Reading, type ReadingKind } from './readings.js';
import { type VerdictParts, verdictOn } from './verdict.js';
import { SCORE_WEIGHTS } from './weights.js';

const WHOLE: VerdictParts = {
  total: 100,
  fault: null,
  otherHarp: null,
  silentBars: [],
  silent: 0,
  struck: 40,
  changes: [{ shown: true, landing: 0 }],
};

describe('verdictOn', () => {
  it.each([
    [100, 'FOLLOWS_EVERY_CHANGE'],
    [90, 'FOLLOWS_EVERY_CHANGE'],
    [89.9, 'FOLLOWS_WELL'],
    [60, 'FOLLOWS_WELL'],
    [59.9, 'FOLLOWS_IN_PART'],
    [30, 'FOLLOWS_IN_PART'],
    [29.9, 'HARDLY_FOLLOWS'],
    [0, 'HARDLY_FOLLOWS'],
  ])('verdictOn a total of %s is %s', (total, code) => {
    expect(verdictOn({ ...WHOLE, total })).toEqual({ code, by: 0, otherHarp: null });
  });

  it('verdictOn a high total does not say that every change is heard where one is not', () => {
    const changes = [
      { shown: true, landing: 1 },
      { shown: false, landing: 1 },
    ];
    expect(verdictOn({ ...WHOLE, changes }).code).toBe('FOLLOWS_WELL');
    expect(verdictOn({ ...WHOLE, total: 40, changes }).code).toBe('FOLLOWS_IN_PART');
    expect(verdictOn({ ...WHOLE, total: 20, changes }).code).toBe('HARDLY_FOLLOWS');
  });

  it('verdictOn a low total does not say that no chord is heard where every change is met', () => {
    const verdict = (landing: number | null) =>
      verdictOn({ ...WHOLE, total: 20, changes: [{ shown: null, landing }] }).code;
    expect([1, 0.5].map(verdict)).toEqual(['FOLLOWS_IN_PART', 'FOLLOWS_IN_PART']);
    expect([0, null].map(verdict)).toEqual(['HARDLY_FOLLOWS', 'HARDLY_FOLLOWS']);
  });

  it('verdictOn a take of which a quarter is silent says so first, and counts the bars', () => {
    const silentBars = [10, 11, 12];
    expect(verdictOn({ ...WHOLE, silentBars, silent: 0.25 })).toMatchObject({
      code: 'BARS_NOT_PLAYED',
      by: 3,
    });
    expect(verdictOn({ ...WHOLE, silentBars, silent: 0.24 }).code).toBe('FOLLOWS_EVERY_CHANGE');
  });

  it('verdictOn fewer than six notes is that they are too few', () => {
    expect(verdictOn({ ...WHOLE, struck: 5 }).code).toBe('TOO_LITTLE_TO_JUDGE');
    expect(verdictOn({ ...WHOLE, struck: 6 }).code).toBe('FOLLOWS_EVERY_CHANGE');
  });

  it.each(FAULT_CODES)(
    'verdictOn a take with the fault %s is that fault, whatever else',
    (code) => {
      const fault = { code, by: 2, explains: 1 };
      const verdict = verdictOn({ ...WHOLE, total: 0, silent: 1, struck: 0, fault });
      expect(verdict).toEqual({ code, by: 2, otherHarp: null });
    },
  );
});

const reading = (kind: ReadingKind, explains: number, by = 1): Reading => {
  return { kind, by, explains, chordFit: 0.5 };
};

describe('bestReading', () => {
  it('bestReading is the one that explains most, and none where nothing is explained', () => {
    const [late, other] = [reading('bars-off', 0.6), reading('other-harp', 0.5)];
    expect(bestReading([other, late])).toBe(late);
    expect(bestReading([reading('bars-off', 0), reading('one-chord', 0)])).toBeUndefined();
    expect(bestReading([])).toBeUndefined();
  });

  it('bestReading is staying on one chord where that explains nearly as much', () => {
    const still = reading('one-chord', 0.5, 0);
    const missed = (explains: number) => reading('chord-missed', explains, 7);
    expect(bestReading([missed(0.54), still])).toBe(still);
    expect(bestReading([missed(0.56), still])?.kind).toBe('chord-missed');
    // Not where staying explains nothing at all, however little the other does.
    const little = missed(0.03);
    expect(bestReading([little, reading('one-chord', 0, 0)])).toBe(little);
  });
});

describe('chargeOf', () => {
  const { faults } = SCORE_WEIGHTS;

  it('chargeOf takes off by the kind of fault, from what is explained past a bound', () => {
    const weights = { faults: { ...faults, 'bars-off': 0.8 }, faultsFrom: 0.5 };
    const charge = (explains: number) => chargeOf([reading('bars-off', explains)], weights);
    expect(charge(1)).toBeCloseTo(0.8, 12);
    expect(charge(0.75)).toBeCloseTo(0.4, 12);
    expect(charge(0.5)).toBe(0);
    expect(charge(0.2)).toBe(0);
    expect(chargeOf([], weights)).toBe(0);
  });

  it('chargeOf takes off nothing where the bound is the whole', () => {
    expect(chargeOf([reading('bars-off', 1)], { faults, faultsFrom: 1 })).toBe(0);
  });
});

describe('faultOf', () => {
  const fault = (readings: readonly Reading[], chordFit = 0, played = 12) =>
    faultOf(readings, chordFit, played);

  it.each([
    ['other-harp', 2, 'TAKE_OTHER_HARP', 2],
    ['other-harp', -2, 'TAKE_OTHER_HARP', -2],
    ['bars-off', 1, 'TAKE_BARS_LATE', 1],
    ['bars-off', -2, 'TAKE_BARS_EARLY', 2],
    ['beats-off', 1, 'TAKE_BEATS_LATE', 1],
    ['beats-off', -1, 'TAKE_BEATS_EARLY', 1],
    ['one-chord', 0, 'STAYS_ON_ONE_CHORD', 0],
    ['chord-missed', 5, 'CHORD_MISSED', 5],
  ] as const)('faultOf a take that is best read as %s by %i is %s', (kind, by, code, size) => {
    expect(fault([reading(kind, 0.8, by)])).toEqual({ code, by: size, explains: 0.8 });
  });

  it('faultOf wants three bars played, half of the loss explained, and something lost', () => {
    const late = reading('bars-off', 0.55);
    expect(fault([late])?.code).toBe('TAKE_BARS_LATE');
    expect(fault([late], 0, 11.9)).toBeNull();
    expect(fault([reading('bars-off', 0.54)])).toBeNull();
    // The chord fit would be 0.5: less than a hundredth more is no loss.
    expect(fault([late], 0.49)?.code).toBe('TAKE_BARS_LATE');
    expect(fault([late], 0.495)).toBeNull();
    expect(fault([])).toBeNull();
  });

  it('faultOf wants a clear lead, save where a take stays on one chord', () => {
    const late = reading('bars-off', 0.75);
    expect(fault([late, reading('other-harp', 0.65)])?.code).toBe('TAKE_BARS_LATE');
    expect(fault([late, reading('other-harp', 0.66)])).toBeNull();
    const still = reading('one-chord', 0.75, 0);
    expect(fault([still, reading('chord-missed', 0.75, 7)])?.code).toBe('STAYS_ON_ONE_CHORD');
  });
});
