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

  test('leaves the notes given as they are, and keeps only their three fields', () => {
    const given = [{ ...note, start: 960, velocity: 90 }, note];
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
    expect(Object.is(makeLine([{ ...note, start: -0 }]).notes[0]?.start, 0)).toBe(true);
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

  test('measures the pickup by the bar of its metre', () => {
    expect(makeLine([], { pickup: 3839 }).pickup).toBe(3839);
    expect(() => makeLine([], { metre: '3/4', pickup: 2880 })).toThrow(invalid('pickup'));
    expect(() => makeLine([], { metre: '4/5' as '4/4' })).toThrow(
      expect.objectContaining({ code: 'METRE_UNKNOWN' }),
    );
  });
});
