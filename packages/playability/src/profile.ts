import type { Choice } from './choice.js';
import { STEPS_PER_SECOND, stepsHeld } from './line-times.js';
import type { Problem } from './problem.js';
import { airAfterStep, stageOf } from './stage.js';
import type { Way } from './way.js';

/** What a path asks of a player, counted. */
export interface PathProfile {
  /** Events that are bends, valved bends with them. */
  readonly bends: number;
  /** Events that are overblows or overdraws. */
  readonly overbends: number;
  /** Events that sound several holes. */
  readonly chords: number;
  readonly breathChanges: number;
  /** Lowest and highest hole used; 0 where nothing is played. */
  readonly lowestHole: number;
  readonly highestHole: number;
  /** Seconds drawn less seconds blown, by the time that notes are held. */
  readonly breathBalance: number;
  /** Air at its fullest and at its emptiest, in seconds of playing from half full. */
  readonly fullest: number;
  readonly emptiest: number;
}

/**
 * Counts the events of a way that are bends, and overbends.
 *
 * @internal
 */
export function countTechniques(
  { board }: Problem,
  { choices }: Way,
): Pick<PathProfile, 'bends' | 'overbends'> {
  let bends = 0;
  let overbends = 0;
  for (const choice of choices) {
    const technique = board.choices[choice]?.soundings[0].technique;
    if (technique === 'bend' || technique === 'valved-bend') bends += 1;
    else if (technique === 'overblow' || technique === 'overdraw') overbends += 1;
  }
  return { bends, overbends };
}

/** Counts what a way asks of a player. */
export function profileOf(problem: Problem, way: Way): PathProfile {
  const { choices } = way;
  const { times, board } = problem;
  const made = choices.map((choice) => board.choices[choice] as Choice);
  const count = (holds: (choice: Choice, at: number) => boolean): number =>
    made.filter(holds).length;
  const steps = made.map(({ breath }, event) => {
    const held = stepsHeld(times, event);
    return breath === 'draw' ? held : -held;
  });
  const air = airAlong(problem, choices);
  return Object.freeze({
    ...countTechniques(problem, way),
    chords: count(({ soundings }) => soundings.length > 1),
    breathChanges: count(({ breath }, at) => at > 0 && made[at - 1]?.breath !== breath),
    lowestHole: made.reduce((low, { lowHole }) => Math.min(low, lowHole), made[0]?.lowHole ?? 0),
    highestHole: made.reduce((high, { highHole }) => Math.max(high, highHole), 0),
    breathBalance: steps.reduce((sum, step) => sum + step, 0) / STEPS_PER_SECOND,
    fullest: air.reduce((most, at) => Math.max(most, at), 0) / STEPS_PER_SECOND,
    emptiest: air.reduce((least, at) => Math.min(least, at), 0) / STEPS_PER_SECOND,
  });
}

function airAlong(problem: Problem, choices: readonly number[]): readonly number[] {
  let air = 0;
  return choices.map((choice, event) => {
    air = airAfterStep(stageOf(problem, event, choice), air);
    return air;
  });
}
