import type { Chart } from '@reedplate/form';
import { type Harp, type PlayerLike, type Sounding, soundings } from '@reedplate/layout';
import { makeLine, parseMetre, type TimedNote } from '@reedplate/line';
import { ReedplateError } from '@reedplate/pitch';
import { tabOfLine } from '@reedplate/tab';
import { PRACTICE_CAUTIONS } from '../cautions.js';
import { barredTab } from '../phrase/barred-tab.js';
import type { Exercise } from './make-exercise.js';

const GOAL =
  'From the unbent note slide into the bend, hold it within 10 cents of its pitch for two beats, and let it go; rest a beat.';
const LAST_HOLE = 6;
const CENTS = 100;

/** For each bend of the player on holes 1 to 6 a bar: the unbent note, the bend held, its release, a rest. */
export function bendDrill(chart: Chart, harp: Harp, level: PlayerLike): Exercise {
  const had = soundings(harp, { level });
  const bends = had.filter(({ technique, hole }) => technique === 'bend' && hole <= LAST_HOLE);
  if (bends.length === 0) {
    throw new ReedplateError({
      code: 'SOUNDING_IMPOSSIBLE',
      value: 'bend-drill',
      expected: 'a player who has a bend on holes 1 to 6 of this harp',
    });
  }
  const { metre, tempo } = chart;
  const { beatTicks, barTicks } = parseMetre(metre);
  const rows = bends.map((bend, bar) =>
    drillBar(bend, natural(bend, had), bar * barTicks, beatTicks),
  );
  const line = makeLine(
    rows.flatMap(({ notes }) => notes),
    {
      metre,
      ...(tempo === undefined ? {} : { tempo }),
    },
  );
  const chosen = rows.flatMap(({ soundings: each }) => each);
  return Object.freeze({
    playable: true,
    kind: 'bend-drill',
    goal: GOAL,
    line,
    soundings: Object.freeze(chosen.map((each) => Object.freeze([...each]))),
    tab: barredTab(tabOfLine(line, harp, { soundings: chosen }), metre),
    changes: Object.freeze([]),
    cautions: PRACTICE_CAUTIONS,
  });
}

function natural({ hole, breath }: Sounding, had: readonly Sounding[]): Sounding {
  return had.find(
    (each) => each.hole === hole && each.breath === breath && each.technique === 'natural',
  ) as Sounding;
}

/** The bend begins at the unbent note's pitch and slides down in half a beat. */
function drillBar(bend: Sounding, from: Sounding, start: number, beat: number) {
  const slide = CENTS * (from.pitch - bend.pitch);
  const half = Math.floor(beat / 2);
  const notes: readonly TimedNote[] = [
    { start, duration: half, pitch: from.pitch },
    {
      start: start + half,
      duration: 2 * beat,
      pitch: bend.pitch,
      curve: [
        { at: 0, cents: slide },
        { at: half, cents: 0 },
      ],
    },
    { start: start + half + 2 * beat, duration: half, pitch: from.pitch },
  ];
  return { notes, soundings: [[from], [bend], [from]] as const };
}
