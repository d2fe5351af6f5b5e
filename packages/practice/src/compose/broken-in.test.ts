import { makeChart } from '@reedplate/form';
import { expect, test } from 'vitest';
import { brokenIn } from './broken-in.fixture.js';
import { type ComposedLine, composeLine } from './compose-line.js';

const chart = makeChart('basic', 'G');
const line = composeLine(chart, 'C', { seed: 3 });

/** The line with one note changed. */
function changed(at: number, change: Partial<ComposedLine['steps'][number]>): ComposedLine {
  const steps = line.steps.map((step, index) => (index === at ? { ...step, ...change } : step));
  return { ...line, steps };
}

test('brokenIn finds nothing in a line as it was composed', () => {
  expect(brokenIn(line, chart)).toEqual([]);
});

test('brokenIn finds a note that is moved, a leap, a rhythm and two notes at once', () => {
  const [first] = line.steps;
  if (first === undefined) throw new Error('a line of no notes');
  const moved = { ...first.sounding, pitch: 61 };
  const found = brokenIn(changed(0, { sounding: moved }), chart);
  expect(found).toContain(`no chord tone at the change at tick ${chart.spans[0]?.start}`);
  expect(brokenIn(line, chart, { leap: 0 })).toContain('a leap over 0 semitones');
  expect(brokenIn(line, chart, { resolve: -1 })).toContain(
    'more than -1 notes without a chord tone',
  );
  expect(brokenIn(changed(0, { duration: first.duration - 1 }), chart)).toContain(
    'another rhythm in phrase 2',
  );
  expect(brokenIn(changed(0, { duration: 99_999 }), chart)).toContain('two notes at once');
});
