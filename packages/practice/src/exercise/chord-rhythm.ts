import { type Chart, formOfChart } from '@reedplate/form';
import type { Harp, PlayerLike, Sounding } from '@reedplate/layout';
import { makeLine, parseMetre } from '@reedplate/line';
import { deepFreeze } from '@reedplate/pitch';
import { tabOfLine } from '@reedplate/tab';
import { PRACTICE_CAUTIONS } from '../cautions.js';
import { barredTab } from '../phrase/barred-tab.js';
import { chordGrips } from './chord-grips.js';
import type { Exercise } from './make-exercise.js';

/** Felt beats on which a chord is struck, from 0, and how long it sounds: beats 2 and 4, short. */
const BEATS = [1, 3] as const;
const HELD = 0.5;

/**
 * The chords of a chorus in time, each in one grip of neighbouring holes: no split, which asks for the tongue and comes
 * later. Undefined where a chord has no tone for the player.
 */
export function chordRhythm(
  chart: Chart,
  harp: Harp,
  level: PlayerLike,
  goal: string,
): Exercise | undefined {
  const { metre, tempo, pickup } = chart;
  const { beatTicks, barTicks } = parseMetre(metre);
  const end = pickup + formOfChart(chart).bars.length * barTicks;
  const spans = chart.spans.filter(({ start }) => start < end);
  const grips = chordGrips(
    spans.flatMap(({ chord }) => chord ?? []),
    harp,
    level,
  );
  if (grips === undefined) return undefined;
  const struck = spans.flatMap((span) =>
    BEATS.map((beat) => ({
      start: span.start + beat * beatTicks,
      duration: Math.round(HELD * beatTicks),
      soundings: grips.get(span.chord?.symbol ?? '') ?? [],
    })).filter(({ start, soundings }) => start < span.end && soundings.length > 0),
  );
  const line = makeLine(
    struck.flatMap(({ start, duration, soundings }) =>
      soundings.map(({ pitch }) => ({ start, duration, pitch })),
    ),
    { metre, pickup, ...(tempo === undefined ? {} : { tempo }) },
  );
  const soundings: readonly (readonly Sounding[])[] = struck.map((each) => each.soundings);
  return Object.freeze({
    playable: true,
    kind: 'chord-rhythm',
    goal,
    line,
    soundings: deepFreeze(soundings.map((each) => [...each])),
    tab: barredTab(tabOfLine(line, harp, { soundings }), metre, pickup / beatTicks),
    changes: Object.freeze([]),
    cautions: PRACTICE_CAUTIONS,
  });
}
