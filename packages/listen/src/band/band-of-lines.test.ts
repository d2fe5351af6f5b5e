import { makeBacking } from '@reedplate/backing';
import {
  FORMS,
  type FormBar,
  type FormLike,
  formById,
  makeChart,
  makeForm,
  readChart,
} from '@reedplate/form';
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

  const bar = (numeral: string | null): FormBar => [{ numeral, weight: 1 }];
  /** Three choruses of the basic form, the second of them changed. */
  const basicBut = (change: (bars: readonly FormBar[]) => readonly FormBar[]) => {
    const { bars } = formById('basic');
    const song = makeForm([...bars, ...change(bars), ...bars], { id: 'song' });
    const { parts = [] } = makeBacking(makeChart(song, 'G', { tempo: 100 }));
    const pitched = parts.filter(({ percussion }) => percussion !== true);
    return bandOfLines(
      pitched.map(({ line }) => line),
      { forms: ['basic'] },
    ).differences;
  };

  test('bandOfLines names a bar with other chords', () => {
    const found = basicBut((bars) => bars.map((own, at) => (at === 6 ? bar('bIII7') : own)));
    expect(found).toEqual([
      { kind: 'root', bar: 19, barOfForm: 7, given: 'Bb7', expected: 'G7', cost: 1 },
    ]);
  });

  test('bandOfLines names a bar that was left out, and one that was added', () => {
    expect(basicBut((bars) => bars.filter((_, at) => at !== 5))).toMatchObject([
      { kind: 'missing', bar: null, given: null, expected: 'C7' },
    ]);
    expect(
      basicBut((bars) => bars.flatMap((own, at) => (at === 8 ? [own, own] : [own]))),
    ).toMatchObject([{ kind: 'extra', bar: 22, given: 'D7', expected: null }]);
  });

  test('bandOfLines follows a form in which the band is silent for bars', () => {
    const stops = makeForm(
      [bar('I7'), bar(null), bar('IV7'), bar('V7'), bar('I7'), bar('IV7'), bar(null), bar('V7')],
      { id: 'stops' },
    );
    const { form, chart } = bandOfLines(partsOf(stops, 'A'), {
      forms: ['stops', 'basic'],
      known: { forms: [stops] },
    });
    expect([form?.form, chart.key]).toEqual(['stops', 'A']);
    const filled = makeForm(
      stops.bars.map((own, at) => (at === 6 ? bar('bII7') : own)),
      { id: 'filled' },
    );
    const { differences } = bandOfLines(partsOf(filled, 'A'), {
      forms: ['stops'],
      known: { forms: [stops] },
    });
    expect(differences).toContainEqual(
      expect.objectContaining({ barOfForm: 7, given: 'Bb', expected: 'N.C.' }),
    );
  });

  test('bandOfLines hears a song that is no blues in the key that it is told', () => {
    const song = ['I', 'V', 'vi', 'IV', 'ii', 'IV', 'I', 'V', 'I', 'iii', 'IV', 'iv'].map(bar);
    const parts = partsOf(makeForm(song, { id: 'song' }), 'Db');
    const told = bandOfLines(parts, { key: 'C#' });
    expect([told.form, told.chart.key]).toEqual([null, 'C#']);
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
