import type { NoteExpression, PitchPoint, TimedNote } from '@reedplate/line';
import type { PlayedAs } from './measure.js';

/** How a note of so many ticks is played. Of points of a curve that fall on one tick, the last counts. */
export function playedOver(played: PlayedAs | undefined, duration: number): NoteExpression {
  const { curve, ...rest } = played ?? {};
  if (curve === undefined) return rest;
  const points = curve.map(({ share, cents }): PitchPoint => {
    return { at: Math.min(duration, Math.max(0, Math.round(share * duration))), cents };
  });
  const rising: PitchPoint[] = [];
  for (const point of points) {
    if (point.at === rising.at(-1)?.at) rising.pop();
    if (point.at > (rising.at(-1)?.at ?? -1)) rising.push(point);
  }
  return { ...rest, curve: rising };
}

/** What notation can say of how a note is played: the inverse of {@link playedOver}. */
export function playedOf({ velocity, accent, cents, curve, duration }: TimedNote): PlayedAs {
  return {
    ...(velocity === undefined ? {} : { velocity }),
    ...(accent === undefined ? {} : { accent }),
    ...(cents === undefined ? {} : { cents }),
    ...(curve === undefined
      ? {}
      : { curve: curve.map((point) => ({ share: point.at / duration, cents: point.cents })) }),
  };
}
