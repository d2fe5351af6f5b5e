import type { HandoutLine } from '@reedplate/picture';
import type { LessonStep } from '@reedplate/practice';

/** A step of a lesson as a line of a handout: what to do with it stands before it. */
export function stepLine({
  title,
  words,
  playedOtherwise,
  line,
  soundings,
}: LessonStep): HandoutLine {
  return { title, line, soundings, words: [words, ...playedOtherwise] };
}
