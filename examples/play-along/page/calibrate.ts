import { latencyOf, onsetsIn } from '../src/take.js';
import { type Band, makeSounds, schedule } from './band.js';
import type { Ears } from './ears.js';

const CLICKS = 8;
const APART = 0.6;
const LEAD = 0.5;

/** Plays clicks and hears how late they come in, or claps with them: milliseconds; undefined for too few. */
export async function measureLatency({ context }: Band, ears: Ears): Promise<number | undefined> {
  const click = {
    start: 0,
    duration: 0.1,
    part: 'Click',
    sound: 'rim',
    pitch: 37,
    gain: 1,
  } as const;
  const buffer = makeSounds(context)(click);
  const from = context.currentTime;
  const when = Array.from({ length: CLICKS }, (_, at) => LEAD + at * APART);
  for (const second of when) {
    schedule(context, context.destination, buffer, { gain: 0.4, when: from + second });
  }
  const seconds = LEAD + CLICKS * APART + 0.5;
  await new Promise((resolve) => setTimeout(resolve, seconds * 1000));
  const heard = onsetsIn(ears.samplesBetween(from, from + seconds), context.sampleRate);
  return latencyOf(heard, when);
}
