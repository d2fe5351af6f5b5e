import { type Feel, toFeel } from '@reedplate/form';
import {
  type Line,
  type Metre,
  makeLine,
  parseMetre,
  requireLine,
  retimeNote,
  TICKS_PER_QUARTER,
} from '@reedplate/line';
import { type OptionNames, requireOptions, requirePositive } from '@reedplate/pitch';

/** How swing is applied to a line or removed. */
export interface SwingOptions {
  /** How the eighths are felt; default `shuffle`. */
  readonly feel?: Feel | 'slow';
  /**
   * Length of the first eighth of a beat to the second, above 0 and at most 4; default 2, a triplet.
   * Drummers vary it with tempo, from 3.5 when slow to 1 when fast: Friberg and Sundström (2002).
   */
  readonly ratio?: number;
}

const SWING_OPTIONS: OptionNames<SwingOptions> = { feel: true, ratio: true };
const LARGEST_RATIO = 4;
const TRIPLET = 2;

/**
 * A line as it is played in a feel: the second eighth of each beat comes late, and all between in
 * proportion. Metres with beats of three, such as 12/8, and the straight feel stay as they are.
 *
 * @throws ReedplateError `NUMBER_RANGE` for a wrong ratio, `OPTION_UNKNOWN` for a wrong feel
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { applySwing, removeSwing } from '@reedplate/interchange';
 *
 * const even = makeLine([{ start: 480, duration: 480, pitch: 67 }]);
 * applySwing(even, { feel: 'shuffle' }).notes; // => [{ start: 640, duration: 320, pitch: 67 }]
 * removeSwing(applySwing(even)).notes; // => [{ start: 480, duration: 480, pitch: 67 }]
 * applySwing(even, { ratio: 0 }); // throws NUMBER_RANGE
 * ```
 */
export function applySwing(line: Line, options: SwingOptions = {}): Line {
  requireOptions(options, SWING_OPTIONS, 'applySwing');
  return bend(line, options, (half, share) => mapBeat(half, share));
}

/**
 * A line that was played in a feel, on even eighths again: the inverse of {@link applySwing}, to a tick.
 *
 * @throws ReedplateError `NUMBER_RANGE` for a wrong ratio, `OPTION_UNKNOWN` for a wrong feel
 */
export function removeSwing(line: Line, options: SwingOptions = {}): Line {
  requireOptions(options, SWING_OPTIONS, 'removeSwing');
  return bend(line, options, (half, share) => mapBeat(share, half));
}

type BeatMap = (at: number) => number;

function bend(
  line: Line,
  { feel = 'shuffle', ratio = TRIPLET }: SwingOptions,
  map: (half: number, share: number) => BeatMap,
): Line {
  requireLine(line);
  requirePositive(ratio, { max: LARGEST_RATIO, what: 'a ratio of eighths' });
  if (!isSwung(line.metre, toFeel(feel))) return line;
  const share = (TICKS_PER_QUARTER * ratio) / (ratio + 1);
  const move = moveTicks(line.pickup, map(TICKS_PER_QUARTER / 2, share));
  const { notes, ...head } = line;
  return makeLine(
    notes.map((note) => {
      const start = move(note.start);
      const duration = Math.max(1, move(note.start + note.duration) - start);
      return retimeNote(note, { start, duration });
    }),
    head,
  );
}

/** Only quarter notes are swung: eighths in groups of three already are what swing makes. */
export function isSwung(metre: Metre, feel: Feel): boolean {
  return feel !== 'straight' && parseMetre(metre).beatTicks === TICKS_PER_QUARTER;
}

/** Moves ticks within their beats, counted from bar 1. */
function moveTicks(pickup: number, map: BeatMap): (tick: number) => number {
  return (tick) => {
    const beat = Math.floor((tick - pickup) / TICKS_PER_QUARTER);
    const beatStart = pickup + beat * TICKS_PER_QUARTER;
    return Math.max(0, Math.round(beatStart + map(tick - beatStart)));
  };
}

/** Stretches what comes before `from` to end at `to`, and squeezes the rest of the beat. */
function mapBeat(from: number, to: number): BeatMap {
  return (at) =>
    at <= from
      ? (at * to) / from
      : TICKS_PER_QUARTER -
        ((TICKS_PER_QUARTER - at) * (TICKS_PER_QUARTER - to)) / (TICKS_PER_QUARTER - from);
}
