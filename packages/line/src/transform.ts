import { requireInteger } from '@reedplate/pitch';
import type { Line } from './line.js';
import { makeLine } from './make-line.js';
import { requireLine } from './require-line.js';

/**
 * A line moved up (or down, for negative) by semitones; times stay.
 *
 * @param semitones any whole number
 * @throws ReedplateError `NUMBER_RANGE` for no whole number, `LINE_INVALID` for what is no line, and
 * where a note would leave the range of MIDI numbers
 * @example
 * ```ts
 * import { makeLine, transposeLine } from '@reedplate/line';
 *
 * const riff = makeLine([{ start: 0, duration: 960, pitch: 67 }]);
 * transposeLine(riff, -5).notes[0]?.pitch; // => 62
 * transposeLine(riff, 100); // throws LINE_INVALID
 * ```
 */
export function transposeLine(line: Line, semitones: number): Line {
  const { notes, ...options } = requireLine(line);
  requireInteger(semitones, { what: 'semitones' });
  return makeLine(
    notes.map((note) => ({ ...note, pitch: note.pitch + semitones })),
    options,
  );
}

/**
 * The tick at which the last note ends; 0 for a line without notes.
 *
 * @throws ReedplateError `LINE_INVALID` for what is no line
 * @example
 * ```ts
 * import { lineEnd, makeLine } from '@reedplate/line';
 *
 * lineEnd(makeLine([{ start: 960, duration: 480, pitch: 67 }])); // => 1440
 * ```
 */
export function lineEnd(line: Line): number {
  return requireLine(line).notes.reduce(
    (end, { start, duration }) => Math.max(end, start + duration),
    0,
  );
}
