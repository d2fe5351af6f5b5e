import { makeChart, parseForm } from '@reedplate/form';
import { makeHarp, type TechniqueLevel } from '@reedplate/layout';
import { describe, expect, test } from 'vitest';
import { type ChartChordAvailability, chartAvailability } from './chart-availability.js';
import { describeWarning } from './describe-warning.js';

const chart = makeChart('basic', 'G');
const [one, four, five] = ['G7', 'C7', 'D7'].map(
  (symbol) =>
    chartAvailability(chart, makeHarp('C'), { level: 'bends' }).find(
      ({ chord }) => chord.symbol === symbol,
    ) as ChartChordAvailability,
) as [ChartChordAvailability, ChartChordAvailability, ChartChordAvailability];

function runs({ whole }: ChartChordAvailability): readonly string[] {
  return whole
    .filter(({ gesture, adds }) => gesture === 'run' && adds.length === 0)
    .map(({ breath, holes }) => `${breath} ${holes.join('')}`);
}

function rootsOf({ targets }: ChartChordAvailability): readonly string[] {
  return targets
    .filter(({ degree }) => degree === '1')
    .map(({ sounding }) => `${sounding.hole} ${sounding.breath} ${sounding.technique}`);
}

function wordsOf({ chord, warnings }: ChartChordAvailability, level: TechniqueLevel = 'bends') {
  return warnings.map((warning) => describeWarning(warning, { chord, level }));
}

// A blues in G on a C harp. The chords of the unbent notes are those of Wikipedia,
// "Richter-tuned harmonica" (blow: tonic, draw 1 to 4: dominant); what second position makes of
// them is common practice, no source.
describe('chartAvailability of a blues in G on a C harp', () => {
  test('chartAvailability puts the roots on 2 draw, 4 blow and 4 draw', () => {
    expect(rootsOf(one)).toEqual([
      '2 draw natural',
      '3 blow natural',
      '6 blow natural',
      '9 blow natural',
    ]);
    expect(rootsOf(four)).toContain('4 blow natural');
    expect(rootsOf(five)).toEqual(['1 draw natural', '4 draw natural', '8 draw natural']);
  });

  test('chartAvailability has the I chord whole on draw 1 to 4 and each run of three in it', () => {
    expect(runs(one)).toEqual(expect.arrayContaining(['draw 1234', 'draw 123', 'draw 234']));
    expect(runs(one).every((run) => run.startsWith('draw'))).toBe(true);
    const withSeventh = one.whole.filter(({ lacks, adds }) => lacks.length + adds.length === 0);
    expect(withSeventh.map(({ holes }) => holes)).toContainEqual([2, 3, 4, 5]);
  });

  test('chartAvailability has the IV chord whole on every run of three blow holes', () => {
    const threes = Array.from({ length: 8 }, (_, at) => `blow ${at + 1}${at + 2}${at + 3}`);
    expect(runs(four)).toEqual(expect.arrayContaining(threes));
    expect(runs(four).every((run) => run.startsWith('blow'))).toBe(true);
  });

  test('chartAvailability has no V chord, and warns that 4-5 draw has its root and minor third', () => {
    expect(five.whole).toEqual([]);
    expect(five.warnings.map(({ code }) => code)).toEqual([
      'NO_WHOLE_CHORD',
      'CLASHING_CHORD',
      'NO_UNBENT_TONE',
    ]);
    expect(wordsOf(five)[1]).toBe(
      'draw 4-5 (D5 F5) sounds 1 and b3 of D7 against its 3: usual in a blues, wrong in a major tune',
    );
  });

  test('chartAvailability says which tones have no unbent note, and which are not to be had', () => {
    expect(wordsOf(five)[2]).toBe('the 3 of D7 is not there unbent');
    const [, , natural] = chartAvailability(chart, makeHarp('C'), { level: 'natural' });
    expect(natural?.warnings.at(-1)?.code).toBe('NO_TONE');
    expect(natural && wordsOf(natural, 'natural').at(-1)).toBe('the 3 of D7 is not there unbent');
    expect(natural?.targets.filter(({ degree }) => degree === '3')).toEqual([]);
  });

  test('describeWarning says of a missing tone what the level asked for leaves out', () => {
    const vamp = makeChart(parseForm('| I7 |'), 'C');
    const harp = makeHarp('C', { tuning: 'solo-twelve' });
    const lastAt = (level: TechniqueLevel) =>
      chartAvailability(vamp, harp, { level })
        .flatMap((chord) => wordsOf(chord, level))
        .at(-1);
    expect((['natural', 'bends', 'overbends'] as const).map(lastAt)).toEqual([
      'the b7 of C7 is not there unbent',
      'the b7 of C7 is there neither unbent nor bent',
      'the b7 of C7 is not there unbent',
    ]);
  });

  test('chartAvailability has each chord once, with its numerals and the bars it sounds in', () => {
    const found = chartAvailability(chart, makeHarp('C'));
    expect(found.map(({ chord, numerals, bars }) => [chord.symbol, numerals, bars])).toEqual([
      ['G7', ['I7'], [1, 2, 3, 4, 7, 8, 11]],
      ['C7', ['IV7'], [5, 6, 10]],
      ['D7', ['V7'], [9, 12]],
    ]);
  });

  test('chartAvailability gives every shape where it is asked to, and none unasked', () => {
    expect(one).not.toHaveProperty('shapes');
    const [found] = chartAvailability(chart, makeHarp('C'), { shapes: true });
    const fitOf = (breath: string, holes: string): unknown =>
      found?.shapes?.find((shape) => shape.breath === breath && shape.holes.join('') === holes)
        ?.completeness;
    expect([fitOf('draw', '2345'), fitOf('draw', '1234')]).toEqual(['complete', 'partial']);
  });

  test('chartAvailability judges by the style of the key unless told', () => {
    const minor = makeChart('minor', 'Am');
    expect(chartAvailability(minor, makeHarp('D'))).toEqual(
      chartAvailability(minor, makeHarp('D'), { style: 'minor' }),
    );
  });

  test('chartAvailability refuses a chart without a chord', () => {
    const broken = {
      ...chart,
      spans: chart.spans.map((span) => ({ ...span, chord: null, numeral: null })),
    };
    expect(() => chartAvailability(broken, makeHarp('C'))).toThrow(
      expect.objectContaining({ code: 'CHART_INVALID' }),
    );
  });
});
