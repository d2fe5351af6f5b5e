import type { MidiEvent, TrackEvent } from './midi-bytes.js';

/** An event at a tick of the piece. */
export interface TimedEvent {
  readonly tick: number;
  readonly event: MidiEvent;
}

/** An event in time. */
export function eventAt(tick: number, event: MidiEvent): TimedEvent {
  return { tick, event };
}

/**
 * A track: its events by time, each note's end before the next one's beginning, and an end, at a tick
 * or right after the last event.
 */
export function toTrack(events: readonly TimedEvent[], end = 0): readonly TrackEvent[] {
  const sorted = [...events].sort((a, b) => a.tick - b.tick || rank(a) - rank(b));
  let before = 0;
  const track = sorted.map(({ tick, event }): TrackEvent => {
    const deltaTime = tick - before;
    before = tick;
    return { deltaTime, event };
  });
  return [...track, { deltaTime: Math.max(0, end - before), event: { type: 'endOfTrack' } }];
}

function rank({ event }: TimedEvent): number {
  if (event.type === 'noteOff') return 1;
  return event.type === 'noteOn' ? 2 : 0;
}
