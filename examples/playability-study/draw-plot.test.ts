import { makeStudySetup, studyPlot, studyTune, summariseStudy } from '@reedplate/study';
import { describe, expect, test } from 'vitest';
import { drawPlot } from './draw-plot.js';

const text = (pitches: readonly number[]) =>
  JSON.stringify({
    key: 'C',
    line: { notes: pitches.map((pitch, at) => ({ start: at * 960, duration: 960, pitch })) },
  });

function cellsOf() {
  const setup = makeStudySetup({ positions: [1, 2], levels: ['natural', 'overbends'] });
  const found = [
    [60, 64, 67],
    [60, 61, 66],
  ].map((pitches, at) => studyTune(text(pitches), at + 1, setup));
  return summariseStudy(found.flatMap((each) => ('cells' in each ? [each] : [])));
}

describe('drawPlot', () => {
  test('drawPlot draws every bar, its interval, its label and its value', async () => {
    const spec = studyPlot(cellsOf(), 'wholeShare');
    const svg = await drawPlot(spec);
    expect(svg).toMatch(/^<svg .*<\/svg>\n$/su);
    for (const { label, group, value } of spec.data.values) {
      for (const said of [label, group, value.toFixed(2)]) expect(svg).toContain(`>${said}</text>`);
    }
    expect(svg.match(/aria-roledescription="bar"/gu)).toHaveLength(spec.data.values.length);
    expect(svg.match(/class="mark-rule[^"]*layer_1/gu)?.length ?? 0).toBeGreaterThan(0);
    expect(svg).toContain(`<title>${spec.title.text}</title><desc>${spec.description}</desc>`);
    expect(svg).toContain('<svg role="img" ');
  });

  test('drawPlot is the same each time', async () => {
    const spec = studyPlot(cellsOf(), 'wholeShare', { level: 'natural' });
    expect(await drawPlot(spec)).toBe(await drawPlot(spec));
  });
});
