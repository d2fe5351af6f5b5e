import type { Line } from '@reedplate/line';
import { requireNotes } from '@reedplate/line';
import {
  itemAt,
  type KeyLike,
  requireShape,
  requireSome,
  toKey,
  toPitchClass,
} from '@reedplate/pitch';
import { type MelodyModel, USUAL_CHORD_TONE } from './melody-model.js';

/** A melody to learn from, and its key. */
export interface MelodyExample {
  readonly line: Line;
  readonly key: KeyLike;
}

/** What is added to each count, so that what the examples lack is rare and not forbidden. */
const SMOOTHING = 0.1;
const WIDEST = 12;
const EXAMPLE = { what: 'a melody: a line and its key', code: 'COMPOSE_INVALID' } as const;

/**
 * A {@link MelodyModel} counted from melodies: which degree follows which, and how far melodies leap, with
 * a tenth added to each count. Of notes that sound together the highest counts.
 *
 * @throws ReedplateError `LIST_EMPTY` without an example, `LINE_EMPTY` for one without notes, `KEY_UNKNOWN`
 * @example
 * ```ts
 * import { learnMelody } from '@reedplate/practice';
 * import { makeLine } from '@reedplate/line';
 *
 * const notes = [67, 70, 72, 70, 67].map((pitch, at) => ({ start: at * 480, duration: 480, pitch }));
 * const { transitions, leaps } = learnMelody([{ line: makeLine(notes), key: 'G' }]);
 * transitions[3]; // => [1.1, 0.1, 0.1, 0.1, 0.1, 1.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1]
 * leaps.slice(0, 4); // => [0.1, 0.1, 2.1, 2.1]
 * learnMelody([]); // throws LIST_EMPTY
 * ```
 */
export function learnMelody(examples: readonly MelodyExample[]): MelodyModel {
  const transitions = Array.from({ length: 12 }, () => new Array<number>(12).fill(SMOOTHING));
  const leaps = new Array<number>(WIDEST + 1).fill(SMOOTHING);
  for (const [index, example] of requireSome(examples, 'one melody').entries()) {
    const { line, key } = requireShape(example, {}, { ...EXAMPLE, path: `[${index}]` });
    const { pitchClass } = toKey(key);
    const pitches = topPitches(line);
    for (const [at, pitch] of pitches.entries()) {
      const before = pitches[at - 1];
      if (before === undefined) continue;
      const row = itemAt(transitions, toPitchClass(before - pitchClass));
      const degree = toPitchClass(pitch - pitchClass);
      row[degree] = itemAt(row, degree) + 1;
      const leap = Math.min(WIDEST, Math.abs(pitch - before));
      leaps[leap] = itemAt(leaps, leap) + 1;
    }
  }
  return Object.freeze({
    transitions: Object.freeze(transitions.map((row) => Object.freeze(row))),
    leaps: Object.freeze(leaps),
    chordTone: USUAL_CHORD_TONE,
  });
}

function topPitches(line: Line): readonly number[] {
  const top = new Map<number, number>();
  for (const { start, pitch } of requireNotes(line).notes) {
    top.set(start, Math.max(pitch, top.get(start) ?? 0));
  }
  return [...top.values()];
}
