import { type Line, parseMetre } from '@reedplate/line';
import { ReedplateError } from '@reedplate/pitch';

/** Most bars written: a day of music. */
const MOST_BARS = 20_000;
/** Bars that any line may have, however few its notes. */
const BARS_FOR_ALL = 1000;
/** Bars for each note besides: held or waited for so long on average, a line is damaged. */
const BARS_A_NOTE = 8;

/**
 * Checks that so many bars have a sense for a line: a note forgotten years later, or some hundred held
 * through a whole piece, would make a small file into a large score.
 *
 * @param bars that would be written
 * @param chartBars those that a chart asks for
 * @throws ReedplateError `LINE_INVALID`
 */
export function requireBars(line: Line, bars: number, chartBars: number): void {
  const most = BARS_FOR_ALL + BARS_A_NOTE * line.notes.length;
  if (bars > Math.min(MOST_BARS, most + chartBars)) {
    const fewNotes = most < MOST_BARS ? `, or ${most} where there are so few notes` : '';
    throw invalid(bars, `a line of at most ${MOST_BARS} bars${fewNotes}`);
  }
  const held = line.notes.reduce((sum, note) => sum + barsHeld(note, line), 0);
  if (held > most + chartBars) {
    throw invalid(held, `notes held over at most ${most} bar lines in all`);
  }
}

function barsHeld({ start, duration }: Line['notes'][number], { metre, pickup }: Line): number {
  const { barTicks } = parseMetre(metre);
  const barOf = (tick: number): number => Math.floor((tick - pickup) / barTicks);
  return barOf(start + duration - 1) - barOf(start);
}

/** Voices that sound at once: more than any instrument or singer has, less than damage asks for. */
const MOST_VOICES = 64;

/** @throws ReedplateError `LINE_INVALID` */
export function requireVoices(voices: number): void {
  if (voices > MOST_VOICES) {
    throw invalid(voices, `a line of at most ${MOST_VOICES} notes that overlap`);
  }
}

function invalid(value: number, expected: string): ReedplateError {
  return new ReedplateError({ code: 'LINE_INVALID', value, expected });
}
