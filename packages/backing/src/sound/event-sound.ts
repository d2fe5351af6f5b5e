import {
  type OptionNames,
  requireInteger,
  requireOneOf,
  requireOptions,
  requirePositive,
  requireShape,
} from '@reedplate/pitch';
import { DRUM_NAMES, type DrumName } from '../groove.js';
import type { BandEvent } from './band-events.js';
import { DRUM_SOUNDS } from './drum-sounds.js';
import { strikeSound } from './strike-sound.js';
import { toneSound } from './tone-sound.js';
import { TONE_SOUNDS, type ToneName } from './tone-sounds.js';

/** How events become samples. */
export interface EventSoundOptions {
  /** Samples a second, 8,000 to 192,000; default 44,100. */
  readonly sampleRate?: number;
}

const SOUND_OPTIONS: OptionNames<EventSoundOptions> = { sampleRate: true };

/** As most sound files have it. */
export const USUAL_RATE = 44_100;

/** Seconds after which a note is let go, however long it is written. */
const LONGEST = 20;

/**
 * The samples of what a band sounds, as loud as may be, within -1 and 1: `gain` of the event is the factor
 * to them. The same sound and length give the same samples, so that a player of sound may keep them.
 *
 * @throws ReedplateError `OPTION_UNKNOWN` for a sound that there is not, `NUMBER_RANGE`
 * @example
 * ```ts
 * import { bandEvents, eventSound, makeBacking } from '@reedplate/backing';
 * import { makeChart } from '@reedplate/form';
 *
 * const [click] = bandEvents(makeBacking(makeChart('basic', 'G')));
 * click && eventSound(click, { sampleRate: 8000 }).length; // => 640
 * click && eventSound(click, { sampleRate: 1 }); // throws NUMBER_RANGE
 * ```
 */
export function eventSound(event: BandEvent, options: EventSoundOptions = {}): Float32Array {
  const { sampleRate = USUAL_RATE } = requireOptions(options, SOUND_OPTIONS, 'eventSound');
  requireRate(sampleRate);
  const { sound, pitch, duration } = requireShape(event, { sound: 'text' }, EVENT);
  const name = requireOneOf(sound, SOUNDS, { what: 'a sound of the small band' });
  if (isDrum(name)) return strikeSound(DRUM_SOUNDS[name], sampleRate);
  requirePositive(duration, { what: 'seconds that a note lasts' });
  const held = { pitch, duration: Math.min(LONGEST, duration) };
  return toneSound(TONE_SOUNDS[name], held, sampleRate);
}

const EVENT = { what: 'an event, as bandEvents gives it', code: 'OPTION_UNKNOWN' } as const;

const TONES: readonly ToneName[] = ['bass', 'chords', 'organ', 'reed'];
const SOUNDS = [...DRUM_NAMES, ...TONES];

function isDrum(name: DrumName | ToneName): name is DrumName {
  return DRUM_NAMES.some((drum) => drum === name);
}

/** A rate that recorders and browsers use, if it is one. */
export function requireRate(sampleRate: number): number {
  return requireInteger(sampleRate, { min: 8000, max: 192_000, what: 'samples a second' });
}
