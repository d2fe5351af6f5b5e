import { type NoteScore, SCORE_WEIGHTS } from '@reedplate/chord-tone';
import type { NamedReading } from './tonal-following.js';
import type { NamedChart } from './tonal-line.js';

// The total of a take by names.

/** What it is made of. */
interface TotalParts {
  readonly chordFit: number | null;
  readonly following: number | null;
  readonly readings: readonly NamedReading[];
  readonly notes: readonly NoteScore[];
  readonly chart: NamedChart;
}

/** Half chord fit, half following, less what a reading explains, on the scale, less silence and loose time. */
export function namedTotal({ chordFit, following, readings, notes, chart }: TotalParts): number {
  if (chordFit === null) return 0;
  const { followingShare, calibration, silence, looseFree, looseCost } = SCORE_WEIGHTS;
  const share = following === null ? 0 : followingShare;
  const raw =
    (share * (following ?? 0) + (1 - share) * chordFit) * (1 - chargeOf(readings, chordFit));
  let told = 0;
  for (const [at, low] of calibration.entries()) {
    const high = calibration[at + 1];
    if (raw < low.raw) break;
    const part = high === undefined ? 0 : Math.min(1, (raw - low.raw) / (high.raw - low.raw));
    told = low.total + part * ((high?.total ?? low.total) - low.total);
  }
  const late = looseCost * Math.max(0, loosenessOf(notes, chart) - looseFree);
  const played = Math.max(0, 1 - silence * silentShare(notes, chart));
  return told * played * Math.max(0, 1 - late);
}

function chargeOf(readings: readonly NamedReading[], chordFit: number): number {
  const { faults, faultsFrom } = SCORE_WEIGHTS;
  const explains = (reading: NamedReading): number =>
    chordFit >= 1 ? 0 : Math.max(0, (reading.chordFit - chordFit) / (1 - chordFit));
  let best: NamedReading | undefined;
  for (const one of readings) {
    if (explains(one) > (best === undefined ? 0 : explains(best))) best = one;
  }
  const still = readings.find(({ kind }) => kind === 'one-chord');
  if (still !== undefined && explains(still) > 0) {
    if (explains(still) > (best === undefined ? 0 : explains(best)) - 0.05) best = still;
  }
  if (best === undefined) return 0;
  return faults[best.kind] * Math.max(0, (explains(best) - faultsFrom) / (1 - faultsFrom));
}

function loosenessOf(notes: readonly NoteScore[], { pickup, beatTicks }: NamedChart): number {
  let [distance, count] = [0, 0];
  for (const { held, start } of notes) {
    if (held) continue;
    const beats = (start - pickup) / beatTicks;
    const quarters = Math.abs(beats - Math.round(4 * beats) / 4);
    distance += Math.min(quarters, Math.abs(beats - Math.round(3 * beats) / 3));
    count += 1;
  }
  return count === 0 ? 0 : distance / count;
}

/** Share of the bars with a chord that lie in runs of three and more without a note. */
function silentShare(notes: readonly NoteScore[], { pickup, barTicks, spans }: NamedChart): number {
  const sounding = new Set<number>();
  for (const { start, duration } of notes) {
    const last = Math.ceil((start + duration - pickup) / barTicks);
    for (let bar = Math.floor((start - pickup) / barTicks); bar < last; bar += 1)
      sounding.add(bar + 1);
  }
  const bars = [...new Set(spans.filter(({ symbol }) => symbol !== '').map(({ bar }) => bar))];
  let [silent, run] = [0, 0];
  for (const bar of [...bars, 0]) {
    if (bar > 0 && !sounding.has(bar)) {
      run += 1;
      continue;
    }
    silent += run > 2 ? run : 0;
    run = 0;
  }
  return bars.length === 0 ? 0 : silent / bars.length;
}
