import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Ajv } from 'ajv';
import { describe, expect, test, vi } from 'vitest';
import { studyTune } from '../study.js';
import { makeStudySetup } from '../study-setup.js';
import { type StudyCellSummary, summariseStudy } from '../study-summary.js';
import { STUDY_PLOT_FIGURES, studyPlot } from './study-plot.js';

// A busy machine takes its time over a schema of 2 MB.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

/** The schema that Vega-Lite 6.4.3 ships with itself. */
const SCHEMA = JSON.parse(
  readFileSync(createRequire(import.meta.url).resolve('vega-lite/vega-lite-schema.json'), 'utf8'),
);
const isSpec = new Ajv({ strict: false, allErrors: true, validateFormats: false }).compile(SCHEMA);

const TUNES = [
  [60, 62, 64, 65, 67],
  [60, 64, 67, 72],
  [67, 70, 71, 74],
].map((pitches) =>
  JSON.stringify({
    key: 'C',
    line: { notes: pitches.map((pitch, at) => ({ start: at * 960, duration: 960, pitch })) },
  }),
);

function cellsOf(): readonly StudyCellSummary[] {
  const setup = makeStudySetup({
    tunings: ['standard', 'raised-fifth-draw'],
    positions: [1, 2],
    levels: ['natural', 'overbends'],
  });
  const results = TUNES.map((text, at) => studyTune(text, at + 1, setup));
  return summariseStudy(
    results.flatMap((result) => ('cells' in result ? [result] : [])),
    { resamples: 100 },
  );
}

const CELLS = cellsOf();

describe('studyPlot', () => {
  test.each(STUDY_PLOT_FIGURES)(
    'studyPlot of %s is a specification by its own schema',
    (figure) => {
      const spec = studyPlot(CELLS, figure);
      isSpec(spec);
      expect(isSpec.errors ?? []).toEqual([]);
      expect(JSON.parse(JSON.stringify(spec))).toEqual(spec);
    },
  );

  test('the schema refuses what is no specification', () => {
    expect(isSpec({ ...studyPlot(CELLS, 'wholeShare'), facet: 7 })).toBe(false);
    expect(isSpec({ mark: 'harp' })).toBe(false);
  });

  test('studyPlot holds each figure with its interval, in the order of the cells', () => {
    const { values } = studyPlot(CELLS, 'wholeShare').data;
    expect(values.map(({ value, low, high }) => ({ value, low, high }))).toEqual(
      CELLS.map(({ wholeShare }) => wholeShare),
    );
    expect(values.every(({ low, value, high }) => low <= value && value <= high)).toBe(true);
  });

  test('studyPlot names bars by what tells them apart', () => {
    const labels = (options: Parameters<typeof studyPlot>[2]) =>
      studyPlot(CELLS, 'wholeShare', options).data.values.map(({ label }) => label);
    expect(labels({ position: 1, level: 'natural' })).toEqual(['standard', 'raised-fifth-draw']);
    expect(labels({ position: 1, tuning: 'standard' })).toEqual(['natural', 'overbends']);
    expect(labels({ position: 2 })).toContain('raised-fifth-draw, overbends');
    expect(labels({ position: 1, tuning: 'standard', level: 'natural' })).toEqual(['standard']);
  });

  test('studyPlot leaves out a cell that has no such figure, and says where none is left', () => {
    const [cell] = CELLS;
    if (cell === undefined) throw new Error('no cell');
    const bare = { ...cell, effortPerEvent: null };
    expect(studyPlot([bare, cell], 'effortPerEvent').data.values).toHaveLength(1);
    expect(() => studyPlot([bare], 'effortPerEvent')).toThrow(/cells of a summary/u);
    expect(() => studyPlot(CELLS, 'wholeShare', { tuning: 'none' })).toThrow(/cells of a summary/u);
  });

  test('studyPlot says in words every bar with its interval', () => {
    const { description, title } = studyPlot(CELLS, 'wholeShare', { level: 'natural' });
    for (const { value } of studyPlot(CELLS, 'wholeShare', { level: 'natural' }).data.values) {
      expect(description).toContain(` ${Math.round(value * 100) / 100} (`);
    }
    expect(description).toMatch(/^Bars of share of tunes, with 95 % intervals\. position 1: /u);
    expect(title.text).toBe('Tunes that can be played whole (natural)');
    expect(title.subtitle).toContain('95 % interval');
  });

  test('studyPlot refuses a figure and an option that there is none of', () => {
    expect(() => studyPlot(CELLS, 'wholeshare' as 'wholeShare')).toThrow(/wholeShare/u);
    expect(() => studyPlot(CELLS, 'wholeShare', { levle: 'natural' } as object)).toThrow(/level/u);
  });
});
