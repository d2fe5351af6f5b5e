import { type Line, type Metre, makeLine, parseMetre, type TimedNote } from '@reedplate/line';
import { midi } from '@reedplate/pitch';

/** Ticks of a quarter note, the felt beat of 4/4. */
export const BEAT = 960;

/** How a line of words is played. */
export interface Playing {
  readonly metre?: Metre;
  /** Felt beats before bar 1; the beats of the words count from the beginning of the pickup. */
  readonly pickup?: number;
}

/** Notes as `name@beat` or `name@beat/length`, in felt beats from 0, one long where no length is given. */
export function play(text: string, { metre = '4/4', pickup = 0 }: Playing = {}): Line {
  const { beatTicks } = parseMetre(metre);
  const notes = text.split(' ').map((word) => readNote(word, beatTicks));
  return makeLine(notes, { metre, pickup: pickup * beatTicks });
}

function readNote(text: string, beatTicks: number): TimedNote {
  const [, name = '', beat = '', length = '1'] = /^(.+)@([\d.]+)(?:\/([\d.]+))?$/u.exec(text) ?? [];
  return {
    start: Math.round(Number(beat) * beatTicks),
    duration: Math.round(Number(length) * beatTicks),
    pitch: midi(name),
  };
}
