import type { MidiEvent } from 'midi-file';

/** An event without its time. */
export type UntimedEvent = MidiEvent extends infer Event
  ? Event extends { readonly deltaTime: number }
    ? Omit<Event, 'deltaTime'>
    : never
  : never;

/** An event at a tick of the piece. */
export interface TimedEvent {
  readonly tick: number;
  readonly event: UntimedEvent;
}

/** An event in time. */
export function eventAt(tick: number, event: UntimedEvent): TimedEvent {
  return { tick, event };
}

/** A text event in time, in UTF-8: the library writes one byte a character. */
export function textAt(tick: number, type: 'trackName' | 'marker', text: string): TimedEvent {
  const bytes = Array.from(new TextEncoder().encode(text), (byte) => String.fromCharCode(byte));
  return { tick, event: { type, text: bytes.join('') } as UntimedEvent };
}

/**
 * A track: its events by time, each note's end before the next one's beginning, and an end, at a tick
 * or right after the last event.
 */
export function toTrack(events: readonly TimedEvent[], end = 0): MidiEvent[] {
  const sorted = [...events].sort((a, b) => a.tick - b.tick || rank(a) - rank(b));
  let before = 0;
  const track = sorted.map(({ tick, event }): MidiEvent => {
    const deltaTime = tick - before;
    before = tick;
    return { deltaTime, ...event } as MidiEvent;
  });
  return [...track, { deltaTime: Math.max(0, end - before), type: 'endOfTrack', meta: true }];
}

function rank({ event }: TimedEvent): number {
  if (event.type === 'noteOff') return 1;
  return event.type === 'noteOn' ? 2 : 0;
}
