import { type BandEvent, eventSound } from '@reedplate/backing';
import { eventsBetween, lastSecond } from '../src/place.js';
import type { Session } from '../src/session.js';

/** Seconds from pressing play to the first click, and those that are given to the audio clock ahead. */
const LEAD = 0.3;
const AHEAD = 0.6;
const EVERY = 100;

/** Samples of events as buffers of a context, each made once. */
export function makeSounds(context: BaseAudioContext): (event: BandEvent) => AudioBuffer {
  const made = new Map<string, AudioBuffer>();
  return (event) => {
    const name = `${event.sound} ${event.pitch} ${event.duration.toFixed(4)}`;
    const known = made.get(name);
    if (known !== undefined) return known;
    const samples = eventSound(event, { sampleRate: context.sampleRate });
    const buffer = context.createBuffer(1, samples.length, context.sampleRate);
    buffer.getChannelData(0).set(samples);
    made.set(name, buffer);
    return buffer;
  };
}

/** Gives an event to the audio clock. */
export function schedule(
  context: BaseAudioContext,
  into: AudioNode,
  buffer: AudioBuffer,
  { gain, when }: { readonly gain: number; readonly when: number },
): AudioBufferSourceNode {
  const source = context.createBufferSource();
  const level = context.createGain();
  source.buffer = buffer;
  level.gain.value = gain;
  source.connect(level).connect(into);
  source.start(when);
  return source;
}

/** What keeps a loud chord from distorting. */
export function makeLimiter(context: BaseAudioContext): AudioNode {
  const limiter = context.createDynamicsCompressor();
  Object.assign(limiter.threshold, { value: -6 });
  Object.assign(limiter.ratio, { value: 20 });
  Object.assign(limiter.attack, { value: 0.002 });
  limiter.connect(context.destination);
  return limiter;
}

/** A band that plays sessions. */
export interface Band {
  readonly context: AudioContext;
  readonly start: (session: Session) => void;
  readonly stop: () => void;
  /** Seconds from the first click; undefined where nothing plays. */
  readonly seconds: () => number | undefined;
  /** Second of the audio clock of the first click. */
  readonly began: () => number;
  /** Volume of 100, and the parts that are left out, by their names. */
  readonly setLevels: (volume: number, muted: ReadonlySet<string>) => void;
}

/** Makes a band; a gesture of the player must have come before. */
export function makeBand(): Band {
  const context = new AudioContext();
  const limiter = makeLimiter(context);
  const sounds = makeSounds(context);
  const buses = new Map<string, GainNode>();
  const busOf = (part: string): GainNode => {
    const known = buses.get(part);
    if (known !== undefined) return known;
    const bus = context.createGain();
    bus.connect(limiter);
    buses.set(part, bus);
    return bus;
  };
  for (const part of ['Bass', 'Comping', 'Drums', 'Click', 'Tune']) busOf(part);
  const sounding = new Set<AudioBufferSourceNode>();
  let timer: ReturnType<typeof setInterval> | undefined;
  let first = 0;
  let isPlaying = false;

  const play = (event: BandEvent): void => {
    const timing = { gain: event.gain, when: first + event.start };
    const source = schedule(context, busOf(event.part), sounds(event), timing);
    sounding.add(source);
    source.onended = () => sounding.delete(source);
  };

  const stop = (): void => {
    clearInterval(timer);
    isPlaying = false;
    for (const source of sounding) source.stop();
    sounding.clear();
  };

  const start = (session: Session): void => {
    stop();
    first = context.currentTime + LEAD;
    isPlaying = true;
    let given = 0;
    const last = lastSecond(session);
    const giveAhead = (): void => {
      const until = context.currentTime - first + AHEAD;
      for (const event of eventsBetween(session, given, until)) play(event);
      given = Math.max(given, until);
      if (given > last) clearInterval(timer);
    };
    timer = setInterval(giveAhead, EVERY);
    giveAhead();
  };

  return {
    context,
    start,
    stop,
    seconds: () => (isPlaying ? context.currentTime - first : undefined),
    began: () => first,
    setLevels: (volume, muted) => {
      // Loudness as one hears it goes by the square, nearly.
      const loud = (volume / 100) ** 2 * 2;
      for (const [part, bus] of buses) bus.gain.value = muted.has(part) ? 0 : loud;
    },
  };
}
