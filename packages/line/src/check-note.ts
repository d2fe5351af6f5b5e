import { type ErrorPlace, HIGHEST_MIDI, requireInteger } from '@reedplate/pitch';
import { checkCurve, requireCents } from './check-curve.js';
import { invalidLine, LATEST_TICK, requireTicks } from './invalid-line.js';
import type { NoteExpression, TimedNote } from './line.js';

/**
 * A note with every value checked, frozen; fields of other names are left out.
 *
 * @throws ReedplateError `LINE_INVALID` with `where.path` and `where.index`
 */
export function checkNote(note: TimedNote, index: number): TimedNote {
  if (typeof note !== 'object' || note === null) {
    throw invalidLine(note, 'a note with start, duration and pitch', {
      path: `notes[${index}]`,
      index,
    });
  }
  const at: PlaceOf = (field) => ({ path: `notes[${index}].${field}`, index });
  const start = requireTicks(note.start, { min: 0, max: LATEST_TICK }, at('start'));
  const duration = requireTicks(note.duration, { min: 1, max: LATEST_TICK }, at('duration'));
  const pitch = requireInteger(note.pitch, {
    min: 0,
    max: HIGHEST_MIDI,
    what: 'a MIDI note number',
    code: 'LINE_INVALID',
    where: at('pitch'),
  });
  return Object.freeze({ start, duration, pitch, ...checkExpression(note, at) });
}

type PlaceOf = (field: string) => ErrorPlace;

/** Only what is given: most notes have none of it. */
function checkExpression(note: TimedNote, at: PlaceOf): NoteExpression {
  const { velocity, accent, grace, cents, curve, confidence } = note;
  const points = curve === undefined ? [] : checkCurve(curve, note.duration, at);
  return {
    ...(velocity === undefined ? {} : { velocity: checkVelocity(velocity, at) }),
    ...(isMarked(accent, at('accent')) ? { accent: true } : {}),
    ...(isMarked(grace, at('grace')) ? { grace: true } : {}),
    ...(cents === undefined ? {} : { cents: requireCents(cents, LARGEST_CENTS, at('cents')) }),
    ...(points.length === 0 ? {} : { curve: points }),
    ...(confidence === undefined ? {} : { confidence: checkConfidence(confidence, at) }),
  };
}

/** A note further from its pitch than this is another pitch. */
export const LARGEST_CENTS = 100;
const LOUDEST = 127;

function checkVelocity(velocity: unknown, at: PlaceOf): number {
  return requireInteger(velocity, {
    min: 1,
    max: LOUDEST,
    what: 'a velocity',
    code: 'LINE_INVALID',
    where: at('velocity'),
  });
}

function isMarked(mark: unknown, where: ErrorPlace): boolean {
  if (mark === undefined || typeof mark === 'boolean') return mark === true;
  throw invalidLine(mark, 'true, or left out', where);
}

function checkConfidence(confidence: unknown, at: PlaceOf): number {
  if (typeof confidence === 'number' && confidence >= 0 && confidence <= 1) return confidence + 0;
  throw invalidLine(confidence, 'a confidence, from 0 to 1', at('confidence'));
}
