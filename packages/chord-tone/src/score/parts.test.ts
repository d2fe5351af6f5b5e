import { makeChart } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { parseChord, parseKey } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import { compileChord } from './chord-table.js';
import { confidenceOf } from './confidence.js';
import { resolvedFigure } from './figure.js';
import { compileChart } from './grid.js';
import { hearNotes } from './sounded.js';
import { suggester } from './suggest.js';
import { calibrate } from './total.js';
import { SCORE_WEIGHTS } from './weights.js';

describe('hearNotes', () => {
  it('hearNotes makes one of touching notes of a pitch, and two where a silence lies between', () => {
    const line = makeLine([
      { start: 0, duration: 480, pitch: 67 },
      { start: 480, duration: 480, pitch: 67 },
      { start: 961, duration: 100, pitch: 67 },
    ]);
    expect(hearNotes(line, 10)).toEqual([
      { index: 0, pitch: 67, start: 10, end: 970 },
      { index: 2, pitch: 67, start: 971, end: 1071 },
    ]);
  });

  it('hearNotes keeps voices apart that touch at other pitches', () => {
    const line = makeLine([
      { start: 0, duration: 480, pitch: 67 },
      { start: 0, duration: 960, pitch: 71 },
      { start: 480, duration: 480, pitch: 67 },
    ]);
    expect(hearNotes(line, 0)).toHaveLength(2);
  });
});

describe('compileChord', () => {
  it('compileChord gives every pitch class over G7 in G its class', () => {
    const table = compileChord(parseChord('G7'), parseKey('G'), 'blues');
    expect(table.resting).toEqual([
      'unresolved',
      'unresolved',
      'chord-tone',
      'clash',
      'colour',
      'guide-tone',
      'clash',
      'root',
      'clash',
      'colour',
      'blue',
      'guide-tone',
    ]);
    expect(table.blue[1]).toBe(true);
  });
});

describe('compileChart', () => {
  it('compileChart joins neighbours of one chord within a chorus and not across choruses', () => {
    const { changes, tables } = compileChart(makeChart('basic', 'G', { choruses: 2 }), 'blues');
    const [before, ...chords] = changes;
    expect(before).toMatchObject({ bar: 0, table: { chord: null } });
    expect(chords.map(({ bar }) => bar)).toEqual([
      1, 5, 7, 9, 10, 11, 12, 13, 17, 19, 21, 22, 23, 24,
    ]);
    expect(tables.length).toBe(3);
  });
});

describe('resolvedFigure', () => {
  it('resolvedFigure tells how a resolved note was reached', () => {
    expect(resolvedFigure(undefined, 72, 71)).toBe('approach');
    expect(resolvedFigure(71, 72, 71)).toBe('neighbour');
    expect(resolvedFigure(71, 72, 74)).toBe('passing');
    expect(resolvedFigure(67, 72, 71)).toBe('approach');
    expect(resolvedFigure(73, 72, 74)).toBe('approach');
    expect(resolvedFigure(72, 72, 71)).toBe('approach');
  });
});

describe('calibrate', () => {
  const points = [
    { raw: 0.5, total: 0 },
    { raw: 0.6, total: 40 },
    { raw: 1, total: 100 },
  ];

  it('calibrate reads straight lines between points and is level beyond them', () => {
    expect(calibrate(0.2, points)).toBe(0);
    expect(calibrate(0.55, points)).toBeCloseTo(20, 9);
    expect(calibrate(0.8, points)).toBeCloseTo(70, 9);
    expect(calibrate(1, points)).toBe(100);
    expect(calibrate(7, points)).toBe(100);
  });
});

describe('SCORE_WEIGHTS', () => {
  it('SCORE_WEIGHTS credits no class above the root, and a clash below all', () => {
    const credits = Object.values(SCORE_WEIGHTS.credit);
    expect(SCORE_WEIGHTS.credit.root).toBe(Math.max(...credits));
    expect(SCORE_WEIGHTS.credit.clash).toBe(Math.min(...credits));
  });

  it('SCORE_WEIGHTS has a calibration that rises in both', () => {
    const { calibration } = SCORE_WEIGHTS;
    for (const [index, point] of calibration.entries()) {
      const before = calibration[index - 1] ?? { raw: -1, total: -1 };
      expect(point.raw > before.raw && point.total > before.total).toBe(true);
    }
  });
});

describe('confidenceOf', () => {
  it('confidenceOf rises from a toss of a coin towards certainty', () => {
    const values = [0, 1, 4, 16, 64, 256, 1024].map((notes) => confidenceOf(notes, 3));
    expect(values[0]).toBe(0.5);
    expect(values).toEqual([...values].sort((a, b) => a - b));
    expect(values.at(-1)).toBeGreaterThan(0.999);
    expect(values.at(-1)).toBeLessThanOrEqual(1);
  });

  // Normal distribution at one standard deviation: 0.841345 (value from memory).
  it('confidenceOf follows the normal distribution', () => {
    expect(confidenceOf((1 / 0.13) ** 2, 2)).toBeCloseTo(0.841345, 5);
  });
});

describe('confidenceOf over one chord', () => {
  it('confidenceOf is a toss of a coin where one chord sounds throughout', () => {
    expect(confidenceOf(1000, 1)).toBe(0.5);
    expect(confidenceOf(1000, 0)).toBe(0.5);
  });
});

describe('suggester', () => {
  it('suggester gives the nearest root, third or seventh that the harp has', () => {
    const suggest = suggester({ harp: makeHarp('C'), level: 'natural' });
    expect(suggest(parseChord('D7'), 66)).toMatchObject({ name: 'D4', degree: '1', tab: '-1' });
    expect(suggest(parseChord('C7'), 71)).toMatchObject({ name: 'C5', tab: '+4' });
  });

  it('suggester gives notes alone without a harp, and tab in the dialect asked for', () => {
    expect(suggester({})(parseChord('D7'), 66)).toMatchObject({
      name: 'F#4',
      sounding: null,
      tab: null,
    });
    const arrows = suggester({ harp: makeHarp('C'), dialect: 'arrows' });
    expect(arrows(parseChord('C'), 72)?.tab).toBe('4↑');
  });

  it('suggester prefers the unbent note of a pitch to a bend', () => {
    const suggest = suggester({ harp: makeHarp('C'), level: 'overbends' });
    expect(suggest(parseChord('C'), 72)?.sounding).toMatchObject({
      hole: 4,
      breath: 'blow',
      depth: 0,
    });
  });

  it('suggester keeps within MIDI', () => {
    expect(suggester({})(parseChord('G7'), 0)?.pitch).toBeGreaterThanOrEqual(0);
    expect(suggester({})(parseChord('G7'), 127)?.pitch).toBeLessThanOrEqual(127);
  });
});
