import { makeHarp, TUNINGS, tuningById } from '@reedplate/layout';
import { midi } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { tunings } from '../../shared/arbitraries.fixture.js';
import { tuningsReport } from './report.js';

describe('tuningsReport', () => {
  test('tuningsReport tells of the whole catalogue without an argument, in its order', () => {
    expect(tuningsReport().tunings.map(({ id }) => id)).toEqual(TUNINGS.map(({ id }) => id));
  });

  test('tuningsReport names the reeds of the harp that carries the label', () => {
    fc.assert(
      fc.property(tunings, (tuning) => {
        const [told] = tuningsReport([tuning]).tunings;
        const { holes } = makeHarp(tuning.label, { tuning });
        expect(told?.holes).toBe(holes.length);
        expect(told?.blow.map((note) => midi(note))).toEqual(holes.map(({ blow }) => blow));
        expect(told?.draw.map((note) => midi(note))).toEqual(holes.map(({ draw }) => draw));
      }),
    );
  });

  test('tuningsReport keeps name, use, source and label as the catalogue has them', () => {
    fc.assert(
      fc.property(tunings, (tuning) => {
        const { id, name, use, source, label, labelPosition } = tuning;
        expect(tuningsReport([tuning]).tunings[0]).toMatchObject({
          id,
          name,
          use,
          source,
          label,
          labelPosition,
        });
      }),
    );
  });

  test('tuningsReport gives those asked for, in the order asked', () => {
    const asked = ['solo-twelve', 'standard'].map((id) => tuningById(id));
    expect(tuningsReport(asked).tunings.map(({ id, holes }) => [id, holes])).toEqual([
      ['solo-twelve', 12],
      ['standard', 10],
    ]);
  });
});
