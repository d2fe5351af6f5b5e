import { afterPlaying, afterRest, airMove, airTerm } from './air.js';
import type { Board } from './board.js';
import type { Figures } from './figures.js';
import { secondsHeld, secondsSince, stepsHeld, stepsRested } from './line-times.js';
import type { Problem } from './problem.js';
import { hurryTerm } from './terms.js';

/** A choice at an event: all of a step's cost that does not hang on where it comes from. */
export interface Stage {
  readonly board: Board;
  readonly figures: Figures;
  /** Choices of the board. */
  readonly size: number;
  readonly choice: number;
  /** Thousandths: technique, chord and hold. */
  readonly fixed: number;
  /** Seconds from the onset before. */
  readonly since: number;
  /** Air steps brought back by the rest before. */
  readonly recovered: number;
  /** Air steps moved, signed. */
  readonly move: number;
}

/** Sets the stage for a choice at an event. */
export function stageOf({ times, board }: Problem, event: number, choice: number): Stage {
  const { figures } = board;
  const hold = Math.round((board.holdRate[choice] as number) * secondsHeld(times, event));
  return {
    board,
    figures,
    size: board.choices.length,
    choice,
    fixed: (board.still[choice] as number) + hold,
    since: secondsSince(times, event),
    recovered: Math.round(stepsRested(times, event) * figures.recovery),
    move: airMove(board.airRate[choice] as number, stepsHeld(times, event)),
  };
}

/** What the step from a choice with some air costs, in thousandths. */
export function stepCost(stage: Stage, from: number, air: number): number {
  const { board, fixed, since, figures } = stage;
  const cell = from * stage.size + stage.choice;
  const needed = board.needed[cell] as number;
  return (
    fixed +
    (board.move[cell] as number) +
    (needed > since ? hurryTerm(needed, since, figures) : 0) +
    airTerm(afterRest(air, stage.recovered), stage.move, figures)
  );
}

/** The air after the step. */
export function airAfterStep({ figures, recovered, move }: Stage, air: number): number {
  return afterPlaying(afterRest(air, recovered), move, figures);
}
