import type { Score } from '@reedplate/chord-tone';
import { type NextStep, nextSteps } from '@reedplate/practice';
import type { Paint } from '../../shared/print.js';

/** Options that an exercise shares with the score: the song and the harp, as they were typed. */
export interface NextGround {
  readonly key: string;
  readonly form: string;
  readonly harp?: string | undefined;
}

/** What to practise next after some takes, each with the command that gives the exercise for it. */
export function showNext(
  scores: readonly Score[],
  ground: NextGround,
  paint: Paint,
): readonly string[] {
  return [
    '',
    paint('heading', 'practise next'),
    ...nextSteps(scores).flatMap((step, at) => [
      `  ${at + 1}  ${step.words}`,
      ...commandOf(step, ground).map((command) => `     ${paint('aside', command)}`),
    ]),
  ];
}

/** An exercise needs a harp, which the score can do without. */
function commandOf({ exercise }: NextStep, { key, form, harp }: NextGround): readonly string[] {
  if (exercise === null || harp === undefined) return [];
  return [
    `reedplate practice --kind ${exercise} --form ${quoted(form)} --key ${quoted(key)} --harp ${quoted(harp)}`,
  ];
}

function quoted(word: string): string {
  return /^[\w#./-]+$/u.test(word) ? word : `"${word}"`;
}
