import { scoreLine } from '@reedplate/chord-tone';
import { makeChart } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { everyHarp, explainPath, fitHarps, type PathExplanation } from '@reedplate/playability';
import { describe, expect, it } from 'vitest';
import {
  bendPicture,
  breathPicture,
  chartPicture,
  effortPicture,
  fitPicture,
  handoutPage,
  harpPicture,
  linePicture,
  positionPicture,
  scorePicture,
} from './index.js';

const chart = makeChart('basic', 'G');
const line = makeLine([{ start: 0, duration: 960, pitch: 67 }]);
const explained = explainPath(line, makeHarp('C')) as PathExplanation;
const ranking = fitHarps(line, everyHarp({ keys: ['C'] }));

/** Each picture as plain JavaScript may ask for it. */
const FUNCTIONS: readonly (readonly [string, (options: never) => unknown])[] = [
  ['harpPicture', (options) => harpPicture('C', options)],
  ['chartPicture', (options) => chartPicture(chart, options)],
  ['linePicture', (options) => linePicture(line, 'C', options)],
  ['bendPicture', (options) => bendPicture([{ start: 0, duration: 1, pitch: 67 }], options)],
  ['breathPicture', (options) => breathPicture(explained, line, options)],
  ['effortPicture', (options) => effortPicture(explained, options)],
  ['fitPicture', (options) => fitPicture(ranking, options)],
  ['scorePicture', (options) => scorePicture(scoreLine(line, chart), chart, options)],
  ['positionPicture', (options) => positionPicture('G', options)],
  ['handoutPage', (options) => handoutPage(chart, 'C', options)],
];

const errorOf = (run: () => unknown): unknown => {
  try {
    return run();
  } catch (error) {
    return error;
  }
};

describe.each(FUNCTIONS)('%s', (name, run) => {
  it('refuses an option that there is none of, and names the nearest', () => {
    const error = errorOf(() => run({ titel: 'x' } as never));
    expect(error).toMatchObject({ code: 'OPTION_UNKNOWN', value: 'titel', nearest: 'title' });
    expect(String(error)).toContain(`an option of ${name}`);
  });

  it.each([null, 7, 'dark', []])('refuses %j in place of options', (options) => {
    expect(errorOf(() => run(options as never))).toMatchObject({ code: 'OPTION_UNKNOWN' });
  });

  it('refuses a theme that there is none of, and names the nearest', () => {
    expect(errorOf(() => run({ theme: 'drak' } as never))).toMatchObject({
      code: 'OPTION_UNKNOWN',
      nearest: 'dark',
    });
  });
});

describe('linePicture', () => {
  it.each([
    [[1], 'OPTION_UNKNOWN'],
    ['1-4', 'OPTION_UNKNOWN'],
    [[-1, 4], 'NUMBER_RANGE'],
    [[2, 1], 'NUMBER_RANGE'],
    [[1, 1.5], 'NUMBER_RANGE'],
    [[7, 9], 'NUMBER_RANGE'],
  ])('linePicture refuses bars %j', (bars, code) => {
    expect(errorOf(() => linePicture(line, 'C', { bars: bars as [number, number] }))).toMatchObject(
      { code },
    );
  });

  it.each([7, 'no', {}, null])('linePicture refuses %j in place of soundings', (soundings) => {
    const options = { soundings: soundings as never };
    expect(errorOf(() => linePicture(line, 'C', options))).toMatchObject({
      code: 'OPTION_UNKNOWN',
    });
  });
});

describe('chartPicture', () => {
  it.each([null, 'basic', {}])('chartPicture refuses %j in place of a chart', (wrong) => {
    expect(errorOf(() => chartPicture(wrong as never))).toMatchObject({ code: 'CHART_INVALID' });
  });
});

describe('handoutPage', () => {
  it('handoutPage refuses a line with an entry that there is none of', () => {
    const lines = [{ title: 'Roots', line, stave: '<svg/>' }] as never;
    expect(errorOf(() => handoutPage(chart, 'C', { lines }))).toMatchObject({
      code: 'OPTION_UNKNOWN',
      value: 'stave',
    });
  });
});
