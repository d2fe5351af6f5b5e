import type { Feel } from '@reedplate/form';
import { type KeyName, ReedplateError } from '@reedplate/pitch';
import { defaultUnit, type MetreField, type TempoField } from './fields.js';
import { type AccidentalReach, openVoice, type Voice } from './voice.js';

/** A tune while it is read, seen by its reader alone. */
export interface Tune {
  title?: string;
  key?: KeyName;
  tempo?: TempoField;
  countIn?: number;
  feel?: Feel;
  /** The metre that the line is counted in: the one in force at the first note. */
  metre?: MetreField;
  unitTicks?: number;
  reach: AccidentalReach;
  /** Whether `K:` has closed the head. */
  inBody: boolean;
  signature: Voice['signature'];
  shift: number;
  partOrder?: readonly string[];
  /** The part of the tune that is written. */
  label?: string;
  readonly voices: Map<string, Voice>;
  current: string;
}

/** Ticks of the unit note length. */
export function unitOf({ unitTicks, metre = {} }: Tune): number {
  return unitTicks ?? defaultUnit(metre);
}

/** Whether a voice has a note or a measure yet. */
export function hasNotes({ voices }: Tune): boolean {
  return [...voices.values()].some(
    ({ measures, lastNotes }) => measures.length > 0 || lastNotes >= 0,
  );
}

/** Most voices of a tune: a large band has fewer. */
const MOST_VOICES = 64;

/**
 * The voice that is written, opened where it is new.
 *
 * @throws ReedplateError `FILE_TOO_LARGE`
 */
export function currentVoice(tune: Tune): Voice {
  const { current, voices, signature, shift, metre = {}, reach, label } = tune;
  const known = voices.get(current);
  if (known !== undefined) return known;
  if (voices.size === MOST_VOICES) {
    const expected = `at most ${MOST_VOICES} voices`;
    throw new ReedplateError({ code: 'FILE_TOO_LARGE', value: 'this tune', expected });
  }
  const unitTicks = unitOf(tune);
  const head = { name: '', signature, shift, metre, unitTicks, reach, label };
  const voice = openVoice(current, head);
  voices.set(current, voice);
  return voice;
}
