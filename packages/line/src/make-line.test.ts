import { describe, expect, test } from 'vitest';
import type { TimedNote } from './line.js';
import { type LineOptions, makeLine } from './make-line.js';

const note: TimedNote = { start: 0, duration: 960, pitch: 67 };
const invalid = (path: string, more: object = {}) =>
  expect.objectContaining({
    code: 'LINE_INVALID',
    where: expect.objectContaining({ path }),
    ...more,
  });

describe('makeLine', () => {
  test('fills in 4/4 without pickup, and leaves out what is not known', () => {
    expect(makeLine([note])).toEqual({ metre: '4/4', pickup: 0, notes: [note] });
    expect(Object.keys(makeLine([note]))).toEqual(['metre', 'pickup', 'notes']);
  });

  test('keeps what it is told', () => {
    const options = { metre: '12/8', pickup: 480, tempo: 62.5, title: 'Slow kettle' } as const;
    expect(makeLine([], options)).toEqual({ ...options, notes: [] });
  });

  test('sorts by start, then pitch, then duration, whatever the order given', () => {
    const sorted: TimedNote[] = [
      { start: 0, duration: 480, pitch: 60 },
      { start: 0, duration: 960, pitch: 60 },
      { start: 0, duration: 240, pitch: 64 },
      { start: 480, duration: 480, pitch: 50 },
    ];
    expect(makeLine(sorted).notes).toEqual(sorted);
    expect(makeLine([...sorted].reverse()).notes).toEqual(sorted);
  });

  test('leaves the notes given as they are, and keeps only the fields of a note', () => {
    const given = [{ ...note, start: 960, finger: 3 }, note];
    const before = structuredClone(given);
    expect(makeLine(given).notes[1]).toEqual({ ...note, start: 960 });
    expect(given).toEqual(before);
    expect(Object.isFrozen(given[0])).toBe(false);
  });

  test('freezes the line, its notes and their list', () => {
    const line = makeLine([note]);
    expect(Object.isFrozen(line) && Object.isFrozen(line.notes)).toBe(true);
    expect(Object.isFrozen(line.notes[0])).toBe(true);
  });

  test('writes a negative zero as the zero of JSON', () => {
    const [written] = makeLine([{ ...note, start: -0, confidence: -0 }]).notes;
    expect(Object.is(written?.start, 0)).toBe(true);
    expect(Object.is(written?.confidence, 0)).toBe(true);
  });

  test.each<[string, unknown]>([
    ['start', -1],
    ['start', 0.5],
    ['start', 2 ** 40 + 1],
    ['start', '0'],
    ['duration', 0],
    ['duration', -960],
    ['duration', Number.NaN],
    ['pitch', -1],
    ['pitch', 128],
    ['pitch', 60.5],
    ['pitch', undefined],
  ])('refuses a note whose %s is %s, and says which', (field, value) => {
    const wrong = { ...note, [field]: value } as TimedNote;
    expect(() => makeLine([note, wrong])).toThrow(invalid(`notes[1].${field}`, { value }));
    expect(() => makeLine([note, wrong])).toThrow(
      expect.objectContaining({ where: expect.objectContaining({ index: 1 }) }),
    );
  });

  test.each([[null], [undefined], ['C4'], [60]])('refuses %s for a note', (wrong) => {
    expect(() => makeLine([note, wrong as unknown as TimedNote])).toThrow(invalid('notes[1]'));
  });

  test('refuses a list with a gap, which is no JSON', () => {
    const sparse: TimedNote[] = [];
    sparse[1] = note;
    expect(() => makeLine(sparse)).toThrow(invalid('notes[0]'));
  });

  test.each([[null], [undefined], [{}], ['notes'], [{ length: 1, 0: note }]])(
    'refuses %j for a list',
    (notes) => {
      expect(() => makeLine(notes as TimedNote[])).toThrow(invalid('notes', { value: notes }));
    },
  );

  test.each<[string, unknown]>([
    ['pickup', -1],
    ['pickup', 3840],
    ['pickup', 0.5],
    ['pickup', null],
    ['tempo', 0],
    ['tempo', 1000.5],
    ['tempo', Number.NaN],
    ['tempo', '120'],
    ['title', 7],
    ['title', null],
  ])('refuses the %s %s', (field, value) => {
    expect(() => makeLine([note], { [field]: value } as LineOptions)).toThrow(
      invalid(field, { value }),
    );
  });

  test('keeps how a note is played, and leaves out what says nothing', () => {
    const played: TimedNote = {
      ...note,
      velocity: 96,
      accent: true,
      grace: true,
      cents: -18.5,
      curve: [
        { at: 0, cents: -90 },
        { at: 960, cents: 2400 },
      ],
      confidence: 0.5,
    };
    expect(makeLine([played]).notes).toEqual([played]);
    const plain = { ...note, accent: false, grace: false, curve: [] };
    expect(makeLine([plain]).notes).toEqual([note]);
    expect(Object.is(makeLine([{ ...note, cents: -0 }]).notes[0]?.cents, 0)).toBe(true);
  });

  test('freezes curves, tempo changes and what is in them, and not those given', () => {
    const curve = [{ at: 0, cents: 5 }];
    const tempoChanges = [{ start: 960, tempo: 80 }];
    const line = makeLine([{ ...note, curve }], { tempo: 90, tempoChanges });
    const made = [line.notes[0]?.curve, line.tempoChanges];
    expect(made).toEqual([curve, tempoChanges]);
    for (const list of made) {
      expect(Object.isFrozen(list) && Object.isFrozen(list?.[0])).toBe(true);
    }
    expect([curve, curve[0], tempoChanges, tempoChanges[0]].some(Object.isFrozen)).toBe(false);
  });

  test('puts notes alike in all but how they are played in the order of their text', () => {
    const [soft, loud] = [3, 5].map((velocity) => ({ ...note, velocity })) as [
      TimedNote,
      TimedNote,
    ];
    for (const given of [
      [soft, loud],
      [loud, soft],
      [loud, soft, loud, soft],
    ]) {
      const velocities = makeLine(given).notes.map(({ velocity = 0 }) => velocity);
      expect(velocities).toEqual(velocities.toSorted((a, b) => a - b));
    }
  });

  test('sorts notes of the same time and pitch by how they are played', () => {
    const list = [{ ...note, velocity: 3 }, note, { ...note, accent: true }];
    expect(makeLine([...list].reverse())).toEqual(makeLine(list));
  });

  test.each<[string, unknown, string?]>([
    ['velocity', 0],
    ['velocity', 128],
    ['velocity', 64.5],
    ['velocity', null],
    ['accent', 1],
    ['accent', null],
    ['grace', 'yes'],
    ['cents', 100.5],
    ['cents', Number.NaN],
    ['cents', '5'],
    ['confidence', 1.5],
    ['confidence', -0.1],
    ['confidence', Number.NaN],
    ['curve', {}],
    ['curve', null],
    ['curve', [null], 'curve[0]'],
    ['curve', [7], 'curve[0]'],
    ['curve', [{ at: 961, cents: 0 }], 'curve[0].at'],
    ['curve', [{ at: -1, cents: 0 }], 'curve[0].at'],
    ['curve', [{ at: 0.5, cents: 0 }], 'curve[0].at'],
    ['curve', [{ at: 0, cents: 2401 }], 'curve[0].cents'],
    ['curve', [{ at: 0 }], 'curve[0].cents'],
    [
      'curve',
      [
        { at: 5, cents: 0 },
        { at: 5, cents: 9 },
      ],
      'curve[1].at',
    ],
  ])('refuses a note whose %s is %j, and says where', (field, value, path = field) => {
    const wrong = { ...note, [field]: value } as TimedNote;
    expect(() => makeLine([note, wrong])).toThrow(invalid(`notes[1].${path}`));
  });

  test.each<[unknown, string]>([
    [{}, 'tempoChanges'],
    [null, 'tempoChanges'],
    [[null], 'tempoChanges[0]'],
    [[{ start: 0, tempo: 90 }], 'tempoChanges[0].start'],
    [[{ start: 960, tempo: 0 }], 'tempoChanges[0].tempo'],
    [
      [
        { start: 960, tempo: 90 },
        { start: 960, tempo: 80 },
      ],
      'tempoChanges[1].start',
    ],
  ])('refuses the tempo changes %j', (tempoChanges, path) => {
    const options = { tempo: 100, tempoChanges } as LineOptions;
    expect(() => makeLine([note], options)).toThrow(invalid(path));
  });

  test('needs the tempo of the beginning where it changes, and no changes are none', () => {
    const tempoChanges = [{ start: 960, tempo: 90 }];
    expect(() => makeLine([note], { tempoChanges })).toThrow(invalid('tempo'));
    expect(makeLine([note], { tempoChanges: [] })).toEqual(makeLine([note]));
  });

  test('counts in whole bars, with the pickup among them', () => {
    expect(makeLine([note], { countIn: 2 })).toMatchObject({ countIn: 2, pickup: 0 });
    expect(makeLine([note], { countIn: 0 })).toEqual(makeLine([note]));
    for (const countIn of [-1, 65, 0.5, null]) {
      expect(() => makeLine([note], { countIn: countIn as number })).toThrow(invalid('countIn'));
    }
    expect(() => makeLine([note], { countIn: 1, pickup: 960 })).toThrow(
      invalid('pickup', { expected: expect.stringMatching(/last bar/u) }),
    );
  });

  test.each([[null], ['4/4'], [7]])('refuses %j for options', (options) => {
    expect(() => makeLine([note], options as unknown as LineOptions)).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
    );
  });

  test('measures the pickup by the bar of its metre', () => {
    expect(makeLine([], { pickup: 3839 }).pickup).toBe(3839);
    expect(() => makeLine([], { metre: '3/4', pickup: 2880 })).toThrow(invalid('pickup'));
    expect(() => makeLine([], { metre: '4/5' as '4/4' })).toThrow(
      expect.objectContaining({ code: 'METRE_UNKNOWN' }),
    );
  });
});
