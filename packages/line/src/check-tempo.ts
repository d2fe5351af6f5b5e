import { requirePositive } from '@reedplate/pitch';
import { invalidLine, LATEST_TICK, requireTicks } from './invalid-line.js';
import type { Line, TempoChange } from './line.js';

const FASTEST_TEMPO = 1000;

/** The tempo and its changes, as far as they are given; an empty list is left out. */
export type TempoHead = Pick<Line, 'tempo' | 'tempoChanges'>;

/**
 * Checks a tempo and where it changes.
 *
 * @throws ReedplateError `LINE_INVALID` with `where.path`
 */
export function checkTempos({ tempo, tempoChanges = [] }: TempoHead): TempoHead {
  if (!Array.isArray(tempoChanges)) {
    throw invalidLine(tempoChanges, 'a list of tempo changes', { path: 'tempoChanges' });
  }
  const changes = checkChanges(tempoChanges);
  if (tempo === undefined && changes.length > 0) {
    throw invalidLine(tempo, 'the tempo of the beginning, where it changes', { path: 'tempo' });
  }
  return {
    ...(tempo === undefined ? {} : { tempo: checkTempo(tempo, 'tempo') }),
    ...(changes.length === 0 ? {} : { tempoChanges: changes }),
  };
}

function checkChanges(changes: readonly TempoChange[]): readonly TempoChange[] {
  let earliest = 1;
  const checked = Array.from(changes, (change, index): TempoChange => {
    const path = `tempoChanges[${index}]`;
    if (typeof change !== 'object' || change === null) {
      throw invalidLine(change, 'a change with start and tempo', { path, index });
    }
    const bounds = { min: earliest, max: LATEST_TICK };
    const start = requireTicks(change.start, bounds, { path: `${path}.start`, index });
    earliest = start + 1;
    return Object.freeze({ start, tempo: checkTempo(change.tempo, `${path}.tempo`) });
  });
  return Object.freeze(checked);
}

function checkTempo(tempo: unknown, path: string): number {
  return requirePositive(tempo, {
    max: FASTEST_TEMPO,
    what: 'felt beats a minute',
    code: 'LINE_INVALID',
    where: { path },
  });
}
