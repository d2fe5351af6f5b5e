import { type Chart, makeChart, parseForm } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { type Line, makeLine, type TimedNote } from '@reedplate/line';
import { midi } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import { scoreLine } from './score-line.js';
import type { NoteScore } from './score-types.js';
import { SCORE_WEIGHTS } from './weights.js';

const BEAT = 960;
const chart = makeChart('basic', 'G');

/** Notes as `name@beat` or `name@beat/length`, in felt beats from 0. */
function play(text: string): Line {
  return makeLine(text.split(' ').map(readNote));
}

function readNote(text: string): TimedNote {
  const [, name = '', beat = '', length = '1'] = /^(.+)@([\d.]+)(?:\/([\d.]+))?$/u.exec(text) ?? [];
  return {
    start: Math.round(Number(beat) * BEAT),
    duration: Math.round(Number(length) * BEAT),
    pitch: midi(name),
  };
}

function classesOf(line: Line, on: Chart = chart): readonly string[] {
  return scoreLine(line, on).notes.map((note) => note.class);
}

describe('scoreLine classes', () => {
  it('scoreLine tells roots, guide tones and other chord tones', () => {
    expect(classesOf(play('G4@0 B4@1 D5@2 F5@3'))).toEqual([
      'root',
      'guide-tone',
      'chord-tone',
      'guide-tone',
    ]);
  });

  it('scoreLine takes the sixth as a guide tone of a chord without a seventh', () => {
    const sixth = makeChart(parseForm('| I6 | IV7 |'), 'G');
    expect(classesOf(play('E4@0'), sixth)).toEqual(['guide-tone']);
  });

  it('scoreLine hears blue notes over I and V, and not over IV', () => {
    expect(classesOf(play('Bb4@0/2'))).toEqual(['blue']);
    expect(classesOf(play('F5@32/2'))).toEqual(['blue']);
    expect(classesOf(play('Bb4@32/2'))).toEqual(['blue']);
    expect(classesOf(play('Eb5@16/2'))).toEqual(['unresolved']);
    const triads = makeChart(parseForm('| I | IV | I | V |'), 'G');
    expect(classesOf(play('F5@0/2'), triads)).toEqual(['blue']);
  });

  it('scoreLine hears the flat fifth as blue only where it moves on', () => {
    expect(classesOf(play('Db5@0/0.5 D5@0.5'))).toEqual(['blue', 'chord-tone']);
    expect(classesOf(play('Db5@0/2 G5@2'))).toEqual(['unresolved', 'root']);
  });

  it('scoreLine hears no blue note in a major tune', () => {
    const [note] = scoreLine(play('Bb4@0/2'), chart, { style: 'major' }).notes;
    expect(note?.class).toBe('clash');
  });

  it('scoreLine tells passing, neighbour and approach notes by how they are reached', () => {
    expect(classesOf(play('B4@0 C5@1 D5@2'))[1]).toBe('passing');
    expect(classesOf(play('D5@0 E5@1 D5@2'))[1]).toBe('neighbour');
    expect(classesOf(play('G4@0 C5@1 B4@2'))[1]).toBe('approach');
    expect(classesOf(play('C5@1 B4@2'))[0]).toBe('approach');
  });

  it('scoreLine hears no resolution later than a beat, by leap, or to a note outside the chord', () => {
    expect(classesOf(play('C5@0 B4@1.25'))[0]).toBe('unresolved');
    expect(classesOf(play('C5@0 G4@1'))[0]).toBe('unresolved');
    expect(classesOf(play('Ab4@0 A4@1'))[0]).toBe('clash');
  });

  it('scoreLine lets a note resolve into the coming chord', () => {
    expect(classesOf(play('B4@15 C5@16'))).toEqual(['guide-tone', 'root']);
    expect(classesOf(play('Eb5@15 E5@16'))[0]).toBe('approach');
  });

  it('scoreLine calls a major seventh held over a dominant a clash, and a brief one unresolved', () => {
    expect(classesOf(play('F#4@0/2'))).toEqual(['clash']);
    expect(classesOf(play('F#4@0/0.25'))).toEqual(['unresolved']);
  });

  it('scoreLine hears the sixth and ninth as colours', () => {
    expect(classesOf(play('E5@0/2 A4@4/2'))).toEqual(['colour', 'colour']);
  });

  it('scoreLine hears a ninth or thirteenth as a colour also where the symbol names it', () => {
    const named = makeChart(parseForm('| I13 | IV9 |'), 'G');
    expect(classesOf(play('E5@0/2 A4@2/2 D5@4/2'), named)).toEqual(['colour', 'colour', 'colour']);
    expect(classesOf(play('G4@0/2 F5@2/2 E5@4/2'), named)).toEqual([
      'root',
      'guide-tone',
      'guide-tone',
    ]);
  });
});

describe('scoreLine in time', () => {
  it('scoreLine counts a push to the coming chord where it is a tone of that alone', () => {
    const [push] = scoreLine(play('E5@15.5/1.5'), chart).notes;
    expect(push).toMatchObject({ chord: 'C7', class: 'guide-tone', push: true, bar: 4, beat: 4.5 });
    const [stays] = scoreLine(play('G4@15.5/0.5'), chart).notes;
    expect(stays).toMatchObject({ chord: 'G7', class: 'root', push: false });
  });

  it('scoreLine counts no note earlier than half a beat as a push', () => {
    expect(scoreLine(play('E5@15/1'), chart).notes[0]).toMatchObject({ chord: 'G7', push: false });
  });

  it('scoreLine takes a pickup before the first chord to belong to it', () => {
    const withPickup = makeChart('basic', 'G', { pickup: BEAT });
    const take = makeLine([{ start: 480, duration: 480, pitch: 67 }], { pickup: BEAT });
    expect(scoreLine(take, withPickup).notes[0]).toMatchObject({
      class: 'root',
      bar: 0,
      beat: 4.5,
      push: true,
    });
  });

  it('scoreLine lays bar 1 on bar 1 where line and chart have different pickups', () => {
    const take = makeLine([{ start: BEAT, duration: BEAT, pitch: 67 }], { pickup: BEAT });
    expect(scoreLine(take, chart).notes[0]).toMatchObject({ bar: 1, beat: 1, start: 0 });
  });

  it('scoreLine judges a note held over a change by each chord in turn', () => {
    const { notes } = scoreLine(play('B4@14/4'), chart);
    expect(
      notes.map(({ chord, class: kind, held, duration }) => [chord, kind, held, duration]),
    ).toEqual([
      ['G7', 'guide-tone', false, 2 * BEAT],
      ['C7', 'clash', true, 2 * BEAT],
    ]);
  });

  it('scoreLine finds a suspension that resolves after the change', () => {
    const { notes } = scoreLine(play('F5@14/2.5 E5@16.5'), chart);
    expect(notes[1]).toMatchObject({ held: true, chord: 'C7', class: 'approach', resolvesTo: 1 });
  });

  it('scoreLine undoes a shuffle that it hears, or is told of', () => {
    const shuffled = makeLine(
      Array.from({ length: 16 }, (_, index) => ({
        start: Math.floor(index / 2) * BEAT + (index % 2) * 640,
        duration: 300,
        pitch: 67,
      })),
    );
    expect(scoreLine(shuffled, chart).alignment.swing).toBe(2);
    expect(scoreLine(shuffled, chart).notes[1]?.metre).toBe(0.25);
    expect(scoreLine(shuffled, chart, { swing: 2 }).measures.timing).toBe(1);
  });

  it('scoreLine takes off a latency that it is told of, or estimates', () => {
    const late = play('G4@0.1/0.5 G4@1.1/0.5 B4@2.1/0.5 D5@3.1/0.5');
    const latency = Math.round(0.1 * BEAT);
    expect(scoreLine(late, chart, { latency }).notes[0]).toMatchObject({ start: 0, beat: 1 });
    expect(scoreLine(late, chart, { latency: 'estimate' }).alignment.latency).toBe(latency);
  });

  it('scoreLine reads 12/8 by its dotted quarters', () => {
    const slow = makeChart('basic', 'G', { metre: '12/8' });
    const take = makeLine([{ start: 4 * 1440, duration: 1440, pitch: 67 }], { metre: '12/8' });
    expect(scoreLine(take, slow).notes[0]).toMatchObject({
      bar: 2,
      beat: 1,
      metre: 1,
      class: 'root',
    });
  });
});

describe('scoreLine on changes, bars and totals', () => {
  const roots = makeLine(
    chart.spans.map(({ start, chord }) => ({
      start,
      duration: 2 * BEAT,
      pitch: 60 + (chord?.tones[0]?.pitchClass ?? 0),
    })),
  );

  it('scoreLine gives roots on every bar the whole total', () => {
    const score = scoreLine(roots, chart);
    expect(score.total).toBe(100);
    expect(score.measures).toMatchObject({
      chordFit: 1,
      landing: 1,
      coverage: 1,
      chordToneShare: 1,
      clashTime: 0,
    });
    expect(score.measures.resolution).toBeNull();
    expect(score.verdict.code).toBe('FOLLOWS_EVERY_CHANGE');
  });

  it('scoreLine lists the changes with what lands on them', () => {
    const { changes } = scoreLine(play('G4@0 F#5@16/2 B4@24'), chart);
    expect(
      changes.map(({ bar, chord, class: kind, landing }) => [bar, chord, kind, landing]),
    ).toEqual([
      [1, 'G7', 'root', 1],
      [5, 'C7', 'unresolved', 0],
      [7, 'G7', 'guide-tone', 1],
      [9, 'D7', null, null],
      [10, 'C7', null, null],
      [11, 'G7', null, null],
      [12, 'D7', null, null],
    ]);
  });

  it('scoreLine says whether a change was shown', () => {
    const { changes } = scoreLine(play('G4@0 G4@16 G4@24 E5@36'), chart);
    expect(changes.map(({ shown }) => shown)).toEqual([true, false, true, null, true, null, null]);
  });

  it('scoreLine gives every bar its chords and its chord fit, also where one note is held over several', () => {
    const { bars } = scoreLine(play('G4@0/16'), chart);
    expect(bars.length).toBe(12);
    expect(
      bars.slice(0, 5).map(({ chords, notes, chordFit }) => [chords.join(), notes, chordFit]),
    ).toEqual([
      ['G7', 1, 1],
      ['G7', 1, 1],
      ['G7', 1, 1],
      ['G7', 1, 1],
      ['C7', 0, null],
    ]);
  });

  it('scoreLine is less sure of few notes than of many', () => {
    expect(scoreLine(play('G4@0'), chart).confidence).toBeLessThan(0.6);
    expect(scoreLine(roots, chart).confidence).toBeGreaterThan(0.6);
  });

  it('scoreLine takes weights of your own', () => {
    const half = scoreLine(play('F#4@0/2'), chart, {
      weights: { credit: { ...SCORE_WEIGHTS.credit, clash: 0.5 } },
    });
    expect(half.measures.chordFit).toBe(0.5);
  });

  it('scoreLine takes the style from the key', () => {
    const minor = makeChart('minor', 'A');
    expect(scoreLine(play('A4@0'), minor).style).toBe('minor');
    expect(scoreLine(play('G4@0'), chart).style).toBe('blues');
  });

  it('scoreLine marks a note that lands outside down once', () => {
    const codes = scoreLine(play('B4@16/2'), chart).feedback.map(({ code }) => code);
    expect(codes).toEqual(['BARS_NOT_PLAYED', 'LITTLE_TO_JUDGE', 'LANDED_OUTSIDE']);
  });

  it('scoreLine remarks on a clash and on an unresolved note on the beat, not on a weak one', () => {
    const codes = scoreLine(play('G4@0 F#4@1/1 C5@4.5/0.5 C5@6/1 G4@8'), chart).feedback.map(
      ({ code, bars, beat }) => `${code} ${bars[0]}:${beat}`,
    );
    expect(codes).toContain('CLASH 1:2');
    expect(codes).toContain('UNRESOLVED 2:3');
    expect(codes.some((code) => code.endsWith('2:1.5'))).toBe(false);
  });

  it('scoreLine makes suggestions on the harp at hand', () => {
    const { feedback } = scoreLine(play('B4@16/2'), chart, { harp: makeHarp('C') });
    expect(feedback.at(-1)).toMatchObject({
      code: 'LANDED_OUTSIDE',
      bars: [5],
      beat: 1,
      chord: 'C7',
      name: 'B4',
      suggestions: [{ name: 'C5', degree: '1', tab: '+4' }],
    });
  });
});

describe('scoreLine on hard input', () => {
  it.each([
    ['no note', [], 'LINE_EMPTY'],
    ['a note before zero', [{ start: -1, duration: 1, pitch: 60 }], 'LINE_INVALID'],
    ['a note of no length', [{ start: 0, duration: 0, pitch: 60 }], 'LINE_INVALID'],
    ['a negative length', [{ start: 0, duration: -960, pitch: 60 }], 'LINE_INVALID'],
    [
      'an endless note',
      [{ start: 0, duration: Number.POSITIVE_INFINITY, pitch: 60 }],
      'LINE_INVALID',
    ],
    ['a pitch between two', [{ start: 0, duration: 1, pitch: 60.5 }], 'LINE_INVALID'],
    ['a pitch out of range', [{ start: 0, duration: 1, pitch: 128 }], 'LINE_INVALID'],
    ['no object', [null], 'LINE_INVALID'],
  ])('scoreLine throws for %s', (_, notes, code) => {
    const line = { metre: '4/4', pickup: 0, notes } as unknown as Line;
    expect(() => scoreLine(line, chart)).toThrow(expect.objectContaining({ code }));
  });

  it.each([[null], [undefined], [7]])(
    'scoreLine throws LINE_INVALID for %j, which is no line',
    (no) => {
      expect(() => scoreLine(no as unknown as Line, chart)).toThrow(
        expect.objectContaining({ code: 'LINE_INVALID', where: {} }),
      );
    },
  );

  it('scoreLine throws for a line in another metre, or a pickup longer than a bar', () => {
    const note = { start: 0, duration: 960, pitch: 60 };
    expect(() => scoreLine(makeLine([note], { metre: '3/4' }), chart)).toThrow(
      expect.objectContaining({ code: 'LINE_INVALID', where: { path: 'metre' } }),
    );
    expect(() => scoreLine({ metre: '4/4', pickup: 3840, notes: [note] }, chart)).toThrow(
      expect.objectContaining({ code: 'LINE_INVALID' }),
    );
    expect(() => scoreLine({ metre: '4/4', pickup: 0, tempo: -1, notes: [note] }, chart)).toThrow(
      expect.objectContaining({ code: 'LINE_INVALID' }),
    );
  });

  it('scoreLine throws for a chart without chords, or with spans out of order', () => {
    const line = play('G4@0');
    expect(() => scoreLine(line, { ...chart, spans: [] })).toThrow(
      expect.objectContaining({ code: 'CHART_INVALID' }),
    );
    expect(() => scoreLine(line, { ...chart, spans: [...chart.spans].reverse() })).toThrow(
      expect.objectContaining({ code: 'CHART_INVALID' }),
    );
  });

  it('scoreLine throws for options out of range', () => {
    const line = play('G4@0');
    for (const options of [
      { swing: 0.5 },
      { swing: 9 },
      { latency: 0.5 },
      { latency: Number.NaN },
    ]) {
      expect(() => scoreLine(line, chart, options)).toThrow(
        expect.objectContaining({ code: 'NUMBER_RANGE' }),
      );
    }
    expect(() => scoreLine(line, chart, { style: 'loud' as 'minor' })).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
    );
  });

  it('scoreLine leaves out what comes after a chorus of silence, and says how many notes', () => {
    const { notes, feedback } = scoreLine(play('G4@0 G4@1000 D5@1001'), chart);
    expect(notes.length).toBe(1);
    expect(feedback).toContainEqual(
      expect.objectContaining({ code: 'NOTES_OUTSIDE_CHART', count: 2 }),
    );
  });

  it('scoreLine gives nothing to a line wholly outside its chart', () => {
    const score = scoreLine(play('G4@0'), chart, { latency: 2 * BEAT });
    expect(score.total).toBe(0);
    expect(score.measures.chordFit).toBeNull();
    expect(score.confidence).toBe(0.5);
  });

  it('scoreLine does not judge notes in a break', () => {
    const broken = makeChart(parseForm('| I7 | N.C. | IV7 |'), 'G');
    const { notes, changes } = scoreLine(play('G4@0 F#4@4 C5@8'), broken);
    expect(notes.map((note) => [note.class, note.chord])).toEqual([
      ['root', 'G7'],
      ['unjudged', null],
      ['root', 'C7'],
    ]);
    expect(changes.length).toBe(2);
  });

  it('scoreLine judges a chart of one chord', () => {
    const vamp = makeChart(parseForm('| I7 | % |'), 'G');
    const score = scoreLine(play('G4@0 B4@1'), vamp);
    expect(score.changes.length).toBe(1);
    expect(score.measures.coverage).toBe(1);
  });

  it('scoreLine judges overlapping notes each by itself, and lands with the best of a chord', () => {
    const stop = makeLine([
      { start: 15360, duration: BEAT, pitch: midi('Db5') },
      { start: 15360, duration: BEAT, pitch: midi('E5') },
    ]);
    const { notes, changes } = scoreLine(stop, chart);
    expect(notes.length).toBe(2);
    expect(changes[1]).toMatchObject({ landing: 1, class: 'guide-tone' });
  });

  it('scoreLine puts notes in order', () => {
    const notes = [
      { start: 960, duration: 960, pitch: 71 },
      { start: 0, duration: 960, pitch: 67 },
    ];
    const found = scoreLine({ metre: '4/4', pickup: 0, notes }, chart).notes;
    expect(found.map(({ pitch }) => pitch)).toEqual([67, 71]);
  });

  it('scoreLine takes a note as long as the chart and one far longer', () => {
    const long = scoreLine(makeLine([{ start: 0, duration: 2 ** 40, pitch: 67 }]), chart);
    expect(long.notes.reduce((sum, { duration }) => sum + duration, 0)).toBe(12 * 4 * BEAT);
  });

  it('scoreLine takes twenty thousand notes, also all at once', () => {
    const many = makeChart('basic', 'G', { choruses: 200 });
    const line = makeLine(
      Array.from({ length: 20_000 }, (_, index) => ({
        start: index * 400,
        duration: 390,
        pitch: 55 + (index % 25),
      })),
    );
    expect(scoreLine(line, many).notes.length).toBeGreaterThanOrEqual(20_000);
    const pile = makeLine(
      Array.from({ length: 20_000 }, (_, index) => ({
        start: index % 2,
        duration: 960,
        pitch: index % 128,
      })),
    );
    expect(scoreLine(pile, chart).total).toBeGreaterThanOrEqual(0);
  });
});

describe('scoreLine note by note', () => {
  it('scoreLine spells by the chord, else by the key', () => {
    const flat = makeChart('basic', 'Ab');
    const names = scoreLine(play('Cb5@16 D5@18/0.5'), flat).notes.map(({ name }) => name);
    expect(names).toEqual(['Cb5', 'D5']);
  });

  it('scoreLine gives each note its place, weight and credit', () => {
    const [first, second] = scoreLine(play('G4@0/2 C5@2/0.5 B4@2.5'), chart)
      .notes as readonly NoteScore[];
    expect(first).toMatchObject({
      index: 0,
      bar: 1,
      beat: 1,
      weight: 2.5,
      credit: 1,
      metre: 1,
      degree: '1',
    });
    expect(second).toMatchObject({
      weight: 1,
      credit: 0.6,
      metre: 0.75,
      degree: '4',
      resolvesTo: 2,
    });
  });
});
