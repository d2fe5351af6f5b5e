import { describe, expect, test } from 'vitest';
import { lineFromSeconds, type NoteInSeconds, notesInSeconds } from './line-in-seconds.js';
import { makeLine } from './make-line.js';

const heard: NoteInSeconds = {
  start: 1,
  duration: 0.5,
  pitch: 67,
  velocity: 80,
  confidence: 0.9,
  curve: [
    { at: 0, cents: -80 },
    { at: 0.25, cents: -3 },
  ],
};

describe('lineFromSeconds', () => {
  test.each([-0.001, Number.NaN, Number.POSITIVE_INFINITY])(
    'says in seconds where a note cannot start: %d',
    (start) => {
      expect(() => lineFromSeconds([{ ...heard, start }], { tempo: 120 })).toThrow(
        expect.objectContaining({
          code: 'LINE_INVALID',
          value: Number.isFinite(start) ? start : expect.anything(),
          expected: 'seconds, from 0',
          where: { path: 'notes[0].start', index: 0 },
        }),
      );
    },
  );

  test('lays notes on ticks with all that is known of how they are played', () => {
    const head = { tempo: 120, metre: '12/8', title: 'Take one' } as const;
    const line = lineFromSeconds([heard], head);
    expect(line).toEqual(
      makeLine(
        [
          {
            start: 2880,
            duration: 1440,
            pitch: 67,
            velocity: 80,
            confidence: 0.9,
            curve: [
              { at: 0, cents: -80 },
              { at: 720, cents: -3 },
            ],
          },
        ],
        head,
      ),
    );
  });

  test('follows the tempo where it changes', () => {
    const tempoChanges = [{ start: 960, tempo: 120 }];
    const { notes } = lineFromSeconds([{ start: 0.5, duration: 1, pitch: 60 }], {
      tempo: 60,
      tempoChanges,
    });
    expect(notes).toEqual([{ start: 480, duration: 1440, pitch: 60 }]);
  });

  test('lets the shortest note last a tick, and keeps of points on one tick the last', () => {
    const curve = [
      { at: 0, cents: 1 },
      { at: 0.00001, cents: 2 },
    ];
    const short = { start: 0, duration: 0.00001, pitch: 60, curve };
    expect(lineFromSeconds([short], { tempo: 60 }).notes).toEqual([
      { start: 0, duration: 1, pitch: 60, curve: [{ at: 0, cents: 2 }] },
    ]);
  });

  test('counts from the second that is told', () => {
    const [note] = lineFromSeconds([heard], { tempo: 60, from: 0.75 }).notes;
    expect(note?.start).toBe(240);
  });

  test.each<[string, unknown]>([
    ['notes[0]', null],
    ['notes[0].start', { ...heard, start: -1 }],
    ['notes[0].start', { ...heard, start: Number.POSITIVE_INFINITY }],
    ['notes[0].start', { ...heard, start: undefined }],
    ['notes[0].duration', { ...heard, duration: 0 }],
    ['notes[0].duration', { ...heard, duration: Number.NaN }],
    ['notes[0].pitch', { ...heard, pitch: 60.5 }],
    ['notes[0].curve', { ...heard, curve: 7 }],
    [
      'notes[0].curve[1].at',
      {
        ...heard,
        curve: [
          { at: 0, cents: 0 },
          { at: 2, cents: 0 },
        ],
      },
    ],
    ['notes[0].curve[0].at', { ...heard, curve: [null] }],
    ['notes[0].curve[0].cents', { ...heard, curve: [{ at: 0, cents: 9999 }] }],
  ])('refuses what is wrong at %s', (path, note) => {
    expect(() => lineFromSeconds([note as NoteInSeconds], { tempo: 60 })).toThrow(
      expect.objectContaining({
        code: 'LINE_INVALID',
        where: expect.objectContaining({ path, index: 0 }),
      }),
    );
  });

  test('refuses no list, no second and no tempo', () => {
    expect(() => lineFromSeconds({} as NoteInSeconds[], { tempo: 60 })).toThrow(/list of notes/u);
    expect(() => lineFromSeconds([], { tempo: 60, from: Number.NaN })).toThrow(
      /number of seconds/u,
    );
    expect(() => lineFromSeconds([], {})).toThrow(
      expect.objectContaining({ code: 'TEMPO_MISSING' }),
    );
  });
});

describe('notesInSeconds', () => {
  test('gives frozen notes in seconds from tick 0, curves too', () => {
    const curve = [{ at: 480, cents: -40 }];
    const line = makeLine([{ start: 960, duration: 960, pitch: 60, accent: true, curve }], {
      tempo: 60,
      tempoChanges: [{ start: 1440, tempo: 120 }],
    });
    const [note] = notesInSeconds(line);
    expect(note).toEqual({
      start: 1,
      duration: 0.75,
      pitch: 60,
      accent: true,
      curve: [{ at: 0.5, cents: -40 }],
    });
    expect([note, note?.curve, note?.curve?.[0]].every(Object.isFrozen)).toBe(true);
  });

  test('needs a tempo', () => {
    expect(() => notesInSeconds(makeLine([]))).toThrow(
      expect.objectContaining({ code: 'TEMPO_MISSING' }),
    );
  });
});
