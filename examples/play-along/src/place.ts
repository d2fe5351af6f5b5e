import type { BandEvent } from '@reedplate/backing';
import { type ChordNow, chordNow } from '@reedplate/chord-tone';
import { parseMetre, tickAt } from '@reedplate/line';
import { EARLY, type Session } from './session.js';

/** Where a session is at a moment. */
export type Place =
  | { readonly at: 'count-in'; readonly beatsLeft: number }
  | ({
      readonly at: 'bar';
      /** Time through what is played, from 1. */
      readonly pass: number;
      /** Felt beats until another chord comes; null where none does. */
      readonly beatsLeft: number | null;
    } & Pick<ChordNow, 'bar' | 'beat' | 'now' | 'next'>)
  | { readonly at: 'end' };

/** Where a session is, so many seconds after its first click. */
export function placeAt(session: Session, seconds: number): Place {
  const { song, countIn, passSeconds, passes, bars, secondsOfBar } = session;
  const { beatTicks, barTicks } = parseMetre(song.metre);
  const secondsOfBeat = (secondsOfBar * beatTicks) / barTicks;
  const played = seconds + EARLY - countIn;
  if (played < 0) return { at: 'count-in', beatsLeft: Math.ceil(-played / secondsOfBeat) };
  const pass = Math.floor(played / passSeconds) + 1;
  if (pass > passes) return { at: 'end' };
  const loop = {
    start: tickAt({ bar: bars[0], beat: 1 }, song),
    end: tickAt({ bar: bars[1], beat: 1 }, song) + barTicks,
  };
  const within = (played - (pass - 1) * passSeconds) / passSeconds;
  const tick = Math.min(loop.end - 1, loop.start + Math.floor(within * (loop.end - loop.start)));
  const { bar, beat, now, next, ticksLeft } = chordNow(song, { tick }, { loop });
  const beatsLeft = ticksLeft === null ? null : ticksLeft / beatTicks;
  return { at: 'bar', pass, bar, beat, now, next, beatsLeft };
}

/** What sounds from one second to before another. */
export function eventsBetween(session: Session, from: number, to: number): readonly BandEvent[] {
  const { events, countIn, passSeconds, passes } = session;
  const once = events.filter(({ start }) => start >= from && start < to);
  if (Number.isFinite(passes)) return once;
  const first = Math.max(1, Math.floor((from - countIn) / passSeconds));
  const last = Math.floor((to - countIn) / passSeconds);
  const again = Array.from({ length: Math.max(0, last - first + 1) }, (_, at) => first + at);
  return [
    ...once,
    ...again.flatMap((pass) =>
      events
        .filter(({ start }) => start >= countIn)
        .map((event) => ({ ...event, start: event.start + pass * passSeconds }))
        .filter(({ start }) => start >= from && start < to),
    ),
  ];
}

/** Seconds at which the last sound begins; without end where bars are looped. */
export function lastSecond({ events, passes }: Session): number {
  return Number.isFinite(passes) ? (events.at(-1)?.start ?? 0) : Number.POSITIVE_INFINITY;
}
