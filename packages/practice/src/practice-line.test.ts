import { makeChart, parseForm } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { formatSounding } from '@reedplate/tab';
import { describe, expect, it } from 'vitest';
import {
  PRACTICE_KINDS,
  type PracticeKind,
  type PracticeOptions,
  practiceLine,
} from './practice-line.js';

const harp = makeHarp('C');
const chart = makeChart('basic', 'G');

function tabOf(options: PracticeOptions, on = chart): string {
  return practiceLine(on, harp, options)
    .steps.map(({ soundings }) => soundings.map((sounding) => formatSounding(sounding)).join(''))
    .join(' ');
}

describe('practiceLine', () => {
  it('plays the roots of a blues in G where the trade plays them', () => {
    expect(tabOf({ kind: 'roots' })).toBe('-2 -2 -2 -2 +4 +4 -2 -2 -4 +4 -2 -4');
  });

  it('plays chords as whole as the harp has them, and root and fifth for V', () => {
    const bars = tabOf({ kind: 'chords' }).split(' ');
    expect(bars[0]).toBe('-2-3-4-5');
    expect(bars[4]).toBe('+3+4+5');
    expect(bars[8]).toBe('-4-6');
  });

  it('plays guide tones that move by as little as the level allows', () => {
    const { steps } = practiceLine(chart, harp, { kind: 'guide-tones', level: 'bends' });
    const pitches = steps.map(({ soundings }) => soundings[0]?.pitch ?? 0);
    const moved = pitches.reduce(
      (sum, pitch, index) => sum + Math.abs(pitch - (pitches[index - 1] ?? pitch)),
      0,
    );
    expect(moved).toBeLessThanOrEqual(9);
    expect(steps.every(({ degrees }) => ['3', 'b7'].includes(degrees[0] ?? ''))).toBe(true);
  });

  it('plays an arpeggio with a tone on every beat', () => {
    const { steps } = practiceLine(chart, harp, { kind: 'arpeggios' });
    expect(steps.length).toBe(48);
    expect(steps.slice(0, 4).map(({ degrees }) => degrees[0])).toEqual(['1', '3', '5', 'b7']);
    expect(steps.slice(0, 4).map(({ beat }) => beat)).toEqual([1, 2, 3, 4]);
  });

  it('plays each arpeggio up through the chord from one of its tones, not across octaves', () => {
    const bars = tabOf({ kind: 'arpeggios' }).split(' ');
    expect(bars.slice(0, 7).join(' ')).toBe('-2 -3 -4 -5 -4 -3 -2');
    expect(bars.slice(16, 20).join(' ')).toBe('+4 +5 +6 +5');
  });

  it('moves from the last tone of an arpeggio to the nearest beginning of the next', () => {
    const two = makeChart(parseForm('| I7 | IV |'), 'G');
    expect(tabOf({ kind: 'arpeggios' }, two)).toBe('-2 -3 -4 -5 +4 +5 +6 +5');
  });

  it('keeps within the range asked for', () => {
    const { steps } = practiceLine(chart, harp, { kind: 'roots', lowest: 79 });
    expect(steps.every(({ soundings }) => (soundings[0]?.pitch ?? 0) >= 79)).toBe(true);
  });

  it('leaves holes 2 to 6 only for a chord that has nothing there', () => {
    const far = makeChart(parseForm('| I | bIII |', {}), 'C');
    const { steps } = practiceLine(far, harp, { kind: 'roots', level: 'natural' });
    expect(steps[0]?.soundings[0]?.hole).toBe(4);
    expect(steps[1]?.degrees).toEqual(['3']);
  });

  it('is silent where the chart has no chord', () => {
    const broken = makeChart(parseForm('| I7 | N.C. | IV7 |'), 'G');
    const { steps, line } = practiceLine(broken, harp);
    expect(steps.map(({ bar }) => bar)).toEqual([1, 3]);
    expect(line.notes.map(({ start }) => start)).toEqual([0, 7680]);
  });

  it('carries metre, pickup and tempo of the chart', () => {
    const slow = makeChart('basic', 'G', { metre: '12/8', tempo: 60, pickup: 480 });
    const { line } = practiceLine(slow, harp);
    expect(line).toMatchObject({ metre: '12/8', pickup: 480, tempo: 60 });
    expect(line.notes[0]?.start).toBe(480);
  });

  it('throws SOUNDING_IMPOSSIBLE with the bar where the range has no tone of the chord', () => {
    expect(() => practiceLine(chart, harp, { lowest: 100 })).toThrow(
      expect.objectContaining({ code: 'SOUNDING_IMPOSSIBLE', where: { bar: 1, beat: 1 } }),
    );
  });

  it('throws CHART_INVALID for a chart without chords, and OPTION_UNKNOWN for a kind there is not', () => {
    expect(() => practiceLine({ ...chart, spans: [] }, harp)).toThrow(
      expect.objectContaining({ code: 'CHART_INVALID' }),
    );
    expect(() => practiceLine(chart, harp, { kind: 'root' as PracticeKind })).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN', nearest: 'roots' }),
    );
  });

  it.each(PRACTICE_KINDS)('throws OPTION_UNKNOWN for a level there is not, playing %s', (kind) => {
    const level = 'bend' as 'bends';
    expect(() => practiceLine(chart, harp, { kind, level })).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN', nearest: 'bends' }),
    );
  });

  it.each([
    [{ lowest: 72, highest: 60 }],
    [{ lowest: Number.NaN }],
    [{ highest: 200 }],
    [{ lowest: '60' as unknown as number }],
  ])('throws NUMBER_RANGE for the range %j', (range) => {
    expect(() => practiceLine(chart, harp, range)).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE' }),
    );
  });

  it.each(PRACTICE_KINDS)('gives frozen plain data for %s', (kind) => {
    const practice = practiceLine(chart, harp, { kind });
    expect(JSON.parse(JSON.stringify(practice))).toEqual(practice);
    expect(
      [practice, practice.steps, practice.steps[0], practice.line].every(Object.isFrozen),
    ).toBe(true);
  });
});
