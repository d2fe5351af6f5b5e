import { makeBacking } from '@reedplate/backing';
import { FORMS, type FormLike, formById, makeChart, makeForm, readChart } from '@reedplate/form';
import { readMidi, writeMidi } from '@reedplate/interchange';
import { type Line, makeLine, transposeLine } from '@reedplate/line';
import type { KeyLike } from '@reedplate/pitch';
import { describe, expect, test } from 'vitest';
import { bandOfLines } from './band-of-lines.js';

/** The pitched parts of a band over a form. */
function partsOf(
  form: FormLike,
  key: KeyLike,
  options: Parameters<typeof makeBacking>[1] = {},
): readonly Line[] {
  const chart = makeChart(form, key, { choruses: 2, tempo: 100 });
  const { parts = [] } = makeBacking(chart, options);
  return parts.filter(({ percussion }) => percussion !== true).map(({ line }) => line);
}

/** Every third form that is longer than a vamp. */
const SOUGHT = FORMS.filter(({ bars }) => bars.length > 4 && bars.length < 25)
  .filter((_, at) => at % 3 === 0)
  .map(({ id, mode }) => ({ id, mode }));

describe('bandOfLines', () => {
  test.each(SOUGHT)(
    'bandOfLines knows $id by the notes of a band, itself or among those that fit as well',
    ({ id, mode }) => {
      const { form, alike, chart } = bandOfLines(partsOf(id, mode === 'minor' ? 'Dm' : 'D'));
      expect([form, ...alike].map((each) => each?.form)).toContain(id);
      expect(chart.key).toBe(mode === 'minor' ? 'Dm' : 'D');
    },
  );

  test('bandOfLines counts a bar of clicks before the chart', () => {
    expect(bandOfLines(partsOf('quick-change', 'G', { countIn: 2 })).start).toBe(2 * 3840);
    expect(bandOfLines(partsOf('quick-change', 'G', { countIn: 0 })).start).toBe(0);
  });

  test('bandOfLines gives a chart that readChart takes', () => {
    const { chart } = bandOfLines(partsOf('jazz', 'F'));
    expect(readChart(JSON.stringify(chart))).toEqual(chart);
  });

  test('bandOfLines reads a MIDI file without chord symbols', () => {
    const backing = makeBacking(makeChart('eight-bar', 'A', { choruses: 3 }), {
      groove: 'two-beat',
    });
    const { parts } = readMidi(writeMidi(backing));
    const pitched = parts.filter(({ percussion }) => percussion !== true);
    const { form, chart } = bandOfLines(pitched.map(({ line }) => line));
    expect(form?.form).toBe('eight-bar');
    expect(chart.key).toBe('A');
  });

  test('bandOfLines moves its key with the notes', () => {
    const parts = partsOf('basic', 'C');
    const keys = [0, 3, 7, -2].map(
      (up) => bandOfLines(parts.map((part) => transposeLine(part, up))).chart.key,
    );
    expect(keys).toEqual(['C', 'Eb', 'G', 'Bb']);
  });

  test('bandOfLines says that no form fits a song that is no blues', () => {
    const song = makeForm(['I', 'V', 'vi', 'IV', 'ii', 'IV', 'I', 'V', 'I', 'iii', 'IV', 'iv'], {
      id: 'song',
    });
    const { parts = [] } = makeBacking(makeChart(song, 'C', { choruses: 2 }));
    const pitched = parts.filter(({ percussion }) => percussion !== true);
    expect(bandOfLines(pitched.map(({ line }) => line)).form).toBeNull();
  });

  test('bandOfLines takes the forms and the key that are given', () => {
    const mine = makeForm(['I7', 'IV7', 'I7', 'V7'], { id: 'mine' });
    const chart = makeChart(mine, 'G', { choruses: 4 });
    const { parts = [] } = makeBacking(chart);
    const lines = parts.filter(({ percussion }) => percussion !== true).map(({ line }) => line);
    const { form } = bandOfLines(lines, {
      forms: ['mine', 'basic'],
      known: { forms: [mine] },
      key: 'G',
    });
    expect(form).toEqual({ form: 'mine', name: 'Custom form', key: 'G' });
  });

  test('bandOfLines refuses no notes, other metres, too long a tune and what is no line', () => {
    const note = { start: 0, duration: 960, pitch: 60 };
    const failure = (code: string) => expect.objectContaining({ code });
    expect(() => bandOfLines([])).toThrow(failure('LINE_EMPTY'));
    expect(() => bandOfLines([makeLine([])])).toThrow(failure('LINE_EMPTY'));
    expect(() => bandOfLines([makeLine([note]), makeLine([note], { metre: '3/4' })])).toThrow(
      failure('LINE_INVALID'),
    );
    expect(() => bandOfLines([makeLine([{ ...note, start: 3840 * 2000 }])])).toThrow(
      failure('LINE_INVALID'),
    );
    expect(() => bandOfLines('x' as never)).toThrow(failure('LINE_INVALID'));
    expect(() => bandOfLines([{}] as never)).toThrow(failure('LINE_INVALID'));
  });

  test('bandOfLines is plain, frozen data', () => {
    const band = bandOfLines(partsOf('basic', 'E'));
    expect(Object.isFrozen(band.chart.spans)).toBe(true);
    expect(JSON.parse(JSON.stringify(band))).toEqual(band);
    expect(formById(band.form?.form ?? '').bars.length).toBe(12);
  });
});
