import type { NoteScore } from './score-types.js';

type Place = Pick<NoteScore, 'bar' | 'beat'>;

/** What part of a beat a time is said to be in. The bounds are a design choice, no source. */
const PART_OF_BEAT = [
  { before: 1 / 8, say: (beat: number) => `beat ${beat}` },
  { before: 3 / 8, say: (beat: number) => `just after beat ${beat}` },
  // From an even eighth to one swung 2:1 and a little late.
  { before: 17 / 24, say: (beat: number) => `the and of ${beat}` },
  { before: 1, say: (beat: number) => `the end of beat ${beat}` },
] as const;

/** A place as players say it: `bar 2, the and of 3`. Before bar 1 lies the pickup. */
export function placeInWords({ bar, beat }: Place): string {
  const whole = Math.floor(beat);
  const part = PART_OF_BEAT.find(({ before }) => beat - whole < before)?.say(whole);
  return `${bar < 1 ? 'pickup' : `bar ${bar}`}, ${part}`;
}
