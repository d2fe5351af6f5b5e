import type { Chart } from '@reedplate/form';
import { parseMetre, type TempoChange } from '@reedplate/line';
import { ReedplateError, requireInteger } from '@reedplate/pitch';
import { USUAL_TEMPO } from './require-backing.js';

const MOST_STEP = 40;
const SLOWEST = 20;
const FASTEST = 1000;

/**
 * Where each chorus after the first takes another tempo, in ticks of the lines.
 *
 * @throws ReedplateError `NUMBER_RANGE` for a step, or for one that leads out of what can be played
 */
export function ladderOf(chart: Chart, countIn: number, step: number): readonly TempoChange[] {
  requireInteger(step, {
    min: -MOST_STEP,
    max: MOST_STEP,
    what: 'beats a minute between choruses',
  });
  const { tempo = USUAL_TEMPO, spans, choruses, metre } = chart;
  if (step === 0) return [];
  const last = tempo + step * (choruses - 1);
  if (!(last >= SLOWEST && last <= FASTEST)) {
    const expected = `a step that stays from ${SLOWEST} to ${FASTEST} beats a minute for ${choruses} choruses`;
    throw new ReedplateError({ code: 'NUMBER_RANGE', value: step, expected });
  }
  const before = countIn * parseMetre(metre).barTicks;
  return Array.from({ length: choruses - 1 }, (_, at) => {
    const begin = spans.find(({ chorus }) => chorus === at + 2)?.start ?? 0;
    return { start: begin + before, tempo: tempo + step * (at + 1) };
  });
}
