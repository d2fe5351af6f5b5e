import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { defaultUnit, readMetreField, readTempoField, readUnitField } from './fields.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

describe('readMetreField', () => {
  test.each([
    ['4/4', '4/4', 1],
    ['C', '4/4', 1],
    ['C|', '2/2', 1],
    ['6/8', '6/8', 0.75],
    [' 3/4 ', '3/4', 0.75],
    ['(2+3)/8', '5/8', 0.625],
    ['2+2+3/8', '7/8', 0.875],
  ])('readMetreField reads %j as %s', (text, metre, size) => {
    expect(readMetreField(text)).toEqual({ metre, size });
  });

  test('readMetreField reads free metre, and the size of a metre that no line can have', () => {
    expect([readMetreField('none'), readMetreField('')]).toEqual([{}, {}]);
    expect(readMetreField('3/32')).toEqual({ size: 3 / 32 });
  });

  test.each(['4', '4/0', '0/4', 'x/4', '4/x', 'c'])(
    'readMetreField reads nothing in %j',
    (text) => {
      expect(readMetreField(text)).toBeUndefined();
    },
  );
});

describe('readUnitField and defaultUnit', () => {
  test.each([
    ['1/8', 480],
    ['1/4', 960],
    ['1/16', 240],
    ['1', 3840],
    ['3/8', 1440],
  ])('readUnitField reads %j as %i ticks', (text, ticks) => {
    expect(readUnitField(text)).toBe(ticks);
  });

  test.each(['', '1/', '/8', '1/0', '0/8', '-1/8', 'x'])(
    'readUnitField reads nothing in %j',
    (text) => {
      expect(readUnitField(text)).toBeUndefined();
    },
  );

  // ABC 2.1, L: unit note length: a sixteenth below 0.75, an eighth from there on (from memory).
  test.each([
    [{ size: 0.5 }, 240],
    [{ size: 0.749 }, 240],
    [{ size: 0.75 }, 480],
    [{ size: 1 }, 480],
    [{}, 480],
  ])('defaultUnit of %j is %i ticks', (metre, ticks) => {
    expect(defaultUnit(metre)).toBe(ticks);
  });
});

describe('readTempoField', () => {
  test('readTempoField needs a space between beats, and answers at once where there is none', () => {
    const field = `1/${'111/'.repeat(32)}`;
    const begun = performance.now();
    expect(readTempoField(field, 480)).toBeUndefined();
    expect(readTempoField(`${field}=120`, 480)).toBeUndefined();
    // The pattern that tried every way to share the digits out took minutes.
    expect(performance.now() - begun).toBeLessThan(1000);
  });

  test.each([
    ['1/4=120', { beatTicks: 960, perMinute: 120 }],
    ['3/8=60', { beatTicks: 1440, perMinute: 60 }],
    ['"Slowly" 1/4=50.5', { beatTicks: 960, perMinute: 50.5 }],
    ['1/4 = 90 "Shuffle"', { beatTicks: 960, perMinute: 90 }],
    ['1/4 1/8=40', { beatTicks: 1440, perMinute: 40 }],
    ['100', { beatTicks: 480, perMinute: 100 }],
  ])('readTempoField reads %j', (text, tempo) => {
    expect(readTempoField(text, 480)).toEqual(tempo);
  });

  test.each(['', '"Lively"', '1/4=', '1/4=0', '1/0=100', '0', 'fast'])(
    'readTempoField reads nothing in %j',
    (text) => {
      expect(readTempoField(text, 480)).toBeUndefined();
    },
  );

  test('readTempoField gives a usable tempo or none, for any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'0123456789/= "a.') }), (text) => {
        const { beatTicks = 1, perMinute = 1 } = readTempoField(text, 480) ?? {};
        expect(beatTicks > 0 && perMinute > 0 && Number.isFinite(beatTicks * perMinute)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});
