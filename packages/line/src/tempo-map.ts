import { asErrorOf, ReedplateError } from '@reedplate/pitch';
import { checkTempos } from './check-tempo.js';
import type { TempoChange } from './line.js';
import { type Metre, parseMetre } from './metre.js';

/** What seconds are counted by: a line, a chart, or a tempo alone. */
export interface Timing {
  /** Felt beats a minute from tick 0 on; needed. */
  readonly tempo?: number;
  /** Where it changes, in rising order; default nowhere. */
  readonly tempoChanges?: readonly TempoChange[];
  /** Says how long a felt beat is; default `4/4`. */
  readonly metre?: Metre;
}

/** Ticks and seconds of a piece of music, each from the other. Between ticks it goes straight. */
export interface TempoMap {
  readonly seconds: (tick: number) => number;
  /** Not rounded. */
  readonly tick: (seconds: number) => number;
}

/** A stretch of one tempo. */
interface Stretch {
  readonly start: number;
  readonly seconds: number;
  readonly secondsPerTick: number;
}

/**
 * The tempo map of a line or chart, read once for many questions.
 *
 * @throws ReedplateError `TEMPO_MISSING`, `NUMBER_RANGE`, `METRE_UNKNOWN`
 */
export function tempoMapOf(timing: Timing): TempoMap {
  const stretches = stretchesOf(timing);
  return {
    seconds: (tick) => {
      const { start, seconds, secondsPerTick } = lastBefore(stretches, tick, 'start');
      return seconds + (tick - start) * secondsPerTick;
    },
    tick: (at) => {
      const { start, seconds, secondsPerTick } = lastBefore(stretches, at, 'seconds');
      return start + (at - seconds) / secondsPerTick;
    },
  };
}

function stretchesOf(timing: Timing): readonly Stretch[] {
  const { metre = '4/4', tempo, tempoChanges = [] } = requireTempo(timing);
  const { beatTicks } = parseMetre(metre);
  const stretches: Stretch[] = [];
  let before: Stretch = { start: 0, seconds: 0, secondsPerTick: 0 };
  for (const change of [{ start: 0, tempo }, ...tempoChanges]) {
    const { start } = change;
    const seconds = before.seconds + (start - before.start) * before.secondsPerTick;
    before = { start, seconds, secondsPerTick: 60 / (change.tempo * beatTicks) };
    stretches.push(before);
  }
  return stretches;
}

/** Slowest tempo that seconds are counted at: a beat in a day. */
const SLOWEST = 1 / 1440;

function requireTempo(timing: Timing): Timing & { readonly tempo: number } {
  const { tempo } = Object(timing) as Timing;
  if (tempo === undefined) {
    const expected = 'a tempo in felt beats a minute: without one there are no seconds';
    throw new ReedplateError({ code: 'TEMPO_MISSING', value: timing, expected });
  }
  const { tempoChanges = [] } = asErrorOf('NUMBER_RANGE', {}, () => checkTempos(timing));
  const slow = [tempo, ...tempoChanges.map((change) => change.tempo)].find((at) => at < SLOWEST);
  if (slow === undefined) return { ...timing, tempo };
  const expected = 'felt beats a minute, at least one a day where seconds are counted';
  throw new ReedplateError({ code: 'NUMBER_RANGE', value: slow, expected });
}

/** The last stretch that begins at or before a place, by halving; the first where none does. */
function lastBefore(stretches: readonly Stretch[], at: number, by: 'start' | 'seconds'): Stretch {
  let low = 0;
  let high = stretches.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((stretches[middle] as Stretch)[by] <= at) low = middle;
    else high = middle;
  }
  return stretches[low] as Stretch;
}
