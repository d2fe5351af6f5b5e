import { makeChart, parseForm } from '@reedplate/form';
import { makeHarp, type TechniqueLevel } from '@reedplate/layout';
import { describe, expect, test } from 'vitest';
import { type TargetChord, targetReport } from './report.js';

const chart = makeChart('basic', 'G');
const { bars } = targetReport(chart, makeHarp('C'));
const [one, four, five] = [chordOfBar(1), chordOfBar(5), chordOfBar(9)];

function chordOfBar(bar: number): TargetChord {
  const [chord] = bars[bar - 1]?.chords ?? [];
  if (chord === undefined) throw new Error(`bar ${bar} has no chord`);
  return chord;
}

function runs({ whole }: TargetChord): readonly string[] {
  return whole
    .filter(({ gesture, adds }) => gesture === 'run' && adds.length === 0)
    .map(({ breath, holes }) => `${breath} ${holes.join('')}`);
}

function tabOf({ tones }: TargetChord, degree: string): readonly string[] | undefined {
  return tones.find((tone) => tone.degree === degree)?.tab;
}

// A blues in G on a C harp. The chords of the natural notes are those of Wikipedia,
// "Richter-tuned harmonica" (blow: tonic, draw 1 to 4: dominant); what second position makes of
// them is common practice, no source.
describe('targetReport of a blues in G on a C harp', () => {
  test('targetReport puts the roots on 2 draw, 4 blow and 4 draw', () => {
    expect([one.chord, four.chord, five.chord]).toEqual(['G7', 'C7', 'D7']);
    expect(tabOf(one, '1')).toEqual(['-2', '+3', '+6', '+9']);
    expect(tabOf(four, '1')).toContain('+4');
    expect(tabOf(five, '1')).toEqual(['-1', '-4', '-8']);
  });

  test('targetReport has the I chord whole on draw 1 to 4 and each run of three in it', () => {
    expect(runs(one)).toEqual(expect.arrayContaining(['draw 1234', 'draw 123', 'draw 234']));
    expect(runs(one).every((run) => run.startsWith('draw'))).toBe(true);
    const withSeventh = one.whole.filter(({ lacks, adds }) => lacks.length + adds.length === 0);
    expect(withSeventh.map(({ holes }) => holes)).toContainEqual([2, 3, 4, 5]);
  });

  test('targetReport has the IV chord whole on every run of three blow holes', () => {
    const threes = Array.from({ length: 8 }, (_, at) => `blow ${at + 1}${at + 2}${at + 3}`);
    expect(runs(four)).toEqual(expect.arrayContaining(threes));
    expect(runs(four).every((run) => run.startsWith('blow'))).toBe(true);
  });

  test('targetReport has no V chord, and warns that 4-5 draw has its root and minor third', () => {
    expect(five.whole).toEqual([]);
    expect(five.warnings.map(({ code }) => code)).toEqual([
      'NO_WHOLE_CHORD',
      'CONTRADICTING_CHORD',
      'NO_NATURAL_TONE',
    ]);
    expect(five.warnings[1]?.text).toBe(
      'draw 4-5 (D5 F5) sounds 1 and b3 of D7 against its 3: usual in traditional blues, wrong in a bright major tune',
    );
  });

  test('targetReport says which tones have no natural note, and which are not to be had', () => {
    expect(five.warnings[2]?.text).toBe('the 3 of D7 has no natural note');
    const natural = targetReport(chart, makeHarp('C'), { level: 'natural' }).bars[8]?.chords[0];
    expect(natural?.warnings.at(-1)).toEqual({
      code: 'NO_TONE',
      text: 'the 3 of D7 has no natural note',
    });
    expect(natural?.tones[1]?.tab).toEqual([]);
  });

  test('targetReport says of a missing tone what the level asked for leaves out', () => {
    const vamp = makeChart(parseForm('| I7 |'), 'C');
    const harp = makeHarp('C', { tuning: 'solo-twelve' });
    const lastAt = (level: TechniqueLevel) =>
      targetReport(vamp, harp, { level }).bars[0]?.chords[0]?.warnings.at(-1);
    expect((['natural', 'bends', 'overbends'] as const).map(lastAt)).toEqual([
      { code: 'NO_TONE', text: 'the b7 of C7 has no natural note' },
      { code: 'NO_TONE', text: 'the b7 of C7 has neither a natural note nor a bend' },
      { code: 'NO_NATURAL_TONE', text: 'the b7 of C7 has no natural note' },
    ]);
  });

  test('targetReport leaves a break without chords but keeps its bar', () => {
    const broken = {
      ...chart,
      spans: chart.spans.map((span) => ({ ...span, chord: null, numeral: null })),
    };
    expect(targetReport(broken, makeHarp('C')).bars[0]).toEqual({ bar: 1, chords: [] });
  });
});

describe('targetReport on shapes', () => {
  const { shapes } = targetReport(chart, makeHarp('C'));
  const fitOf = (chord: string, breath: string, holes: string): unknown =>
    shapes
      .find((one) => one.chord === chord)
      ?.shapes.find((shape) => shape.breath === breath && shape.holes.join('') === holes)?.fit;

  test('targetReport lists each chord of the chart once', () => {
    expect(shapes.map(({ chord }) => chord)).toEqual(['G7', 'C7', 'D7']);
  });

  test('targetReport tells complete, partial, coloured and contradicting shapes', () => {
    expect(fitOf('G7', 'draw', '2345')).toBe('complete');
    expect(fitOf('G7', 'draw', '1234')).toBe('partial');
    expect(fitOf('G7', 'draw', '23456')).toBe('coloured');
    expect(fitOf('D7', 'draw', '45')).toBe('contradicting');
  });
});
