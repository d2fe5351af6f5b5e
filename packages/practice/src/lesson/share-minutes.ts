import type { LessonGoal } from './lesson.js';

/** Parts of a lesson's time. Design choice: half of it goes to music, not to drills. */
const PARTS: Readonly<Record<LessonGoal, number>> = {
  changes: 2,
  chords: 3,
  'guide-tones': 3,
  riff: 4,
  turnaround: 3,
  choruses: 5,
};

/** Whole minutes for each goal, at least one, that add up to the lesson. */
export function shareMinutes(minutes: number, goals: readonly LessonGoal[]): readonly number[] {
  const spare = minutes - goals.length;
  const parts = goals.map((goal) => PARTS[goal]);
  const total = parts.reduce((sum, part) => sum + part, 0);
  let before = 0;
  let given = 0;
  return parts.map((part) => {
    before += part;
    const upTo = Math.round((spare * before) / total);
    const own = 1 + upTo - given;
    given = upTo;
    return own;
  });
}
