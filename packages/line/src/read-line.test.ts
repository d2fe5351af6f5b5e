import { describe, expect, test } from 'vitest';
import { makeLine } from './make-line.js';
import { readLine } from './read-line.js';

const note = { start: 0, duration: 960, pitch: 67 };

describe('readLine', () => {
  test('reads text and values alike', () => {
    const line = { metre: '12/8', pickup: 480, tempo: 60, title: 'Kettle', notes: [note] };
    const made = makeLine([note], { metre: '12/8', pickup: 480, tempo: 60, title: 'Kettle' });
    expect(readLine(line)).toEqual(made);
    expect(readLine(JSON.stringify(line))).toEqual(made);
  });

  test('reads how notes are played, the count-in and the tempo changes', () => {
    const played = { ...note, velocity: 90, cents: 5, curve: [{ at: 10, cents: -40 }] };
    const head = { countIn: 1, tempo: 90, tempoChanges: [{ start: 960, tempo: 80 }] };
    expect(readLine({ ...head, notes: [played] })).toEqual(makeLine([played], head));
  });

  test('needs only the notes', () => {
    expect(readLine({ notes: [] })).toEqual(makeLine([]));
  });

  test.each([[''], ['{"notes":'], ['nonsense'], ["{'notes': []}"], ['\uD800']])(
    'refuses the text %j',
    (text) => {
      expect(() => readLine(text)).toThrow(
        expect.objectContaining({
          code: 'JSON_MALFORMED',
          value: text,
          expected: 'JSON text',
        }),
      );
    },
  );

  test.each<[unknown, string]>([
    [null, ''],
    [undefined, ''],
    [7, ''],
    [[note], ''],
    ['[]', ''],
    ['null', ''],
    [{}, 'notes'],
    [{ notes: {} }, 'notes'],
    [{ notes: [], pickUp: 0 }, 'pickUp'],
    ['{"notes":[],"__proto__":{}}', '__proto__'],
    ['{"notes":[],"valueOf":1}', 'valueOf'],
    [{ notes: [7] }, 'notes[0]'],
    [{ notes: [note, { ...note, velocety: 3 }] }, 'notes[1].velocety'],
    [{ notes: [{ ...note, velocity: 300 }] }, 'notes[0].velocity'],
    [{ notes: [{ ...note, curve: [{ at: 0, cent: 3 }] }] }, 'notes[0].curve[0].cent'],
    [{ notes: [{ ...note, curve: {} }] }, 'notes[0].curve'],
    [{ notes: [], tempo: 90, tempoChanges: [{ at: 960, tempo: 80 }] }, 'tempoChanges[0].at'],
    [{ notes: [], tempo: 90, tempoChanges: 80 }, 'tempoChanges'],
    [{ notes: [], countIn: '1' }, 'countIn'],
    [{ notes: [{ ...note, pitch: 'C4' }] }, 'notes[0].pitch'],
    [{ notes: [note], title: null }, 'title'],
  ])('refuses %j at %j', (json, path) => {
    expect(() => readLine(json)).toThrow(
      expect.objectContaining({
        code: 'LINE_INVALID',
        where: path === '' ? {} : expect.objectContaining({ path }),
      }),
    );
  });

  test('suggests the field that was meant', () => {
    expect(() => readLine({ notes: [], pickUp: 0 })).toThrow(
      expect.objectContaining({ value: 'pickUp', nearest: 'pickup' }),
    );
  });

  test('refuses a metre that is none', () => {
    for (const metre of ['4/5', null, 4]) {
      expect(() => readLine({ notes: [], metre })).toThrow(
        expect.objectContaining({ code: 'METRE_UNKNOWN', value: metre }),
      );
    }
  });
});
