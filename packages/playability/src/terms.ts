import { itemAt, logOfTwo } from '@reedplate/pitch';
import type { Choice } from './choice.js';
import type { Figures } from './figures.js';

/** What effort is made of, in the order it is reported. */
export const EFFORT_TERMS = Object.freeze([
  'technique',
  'chord',
  'hold',
  'reach',
  'breath',
  'bendMove',
  'repeat',
  'hurry',
  'air',
] as const);

/** A part of an effort; see {@link EFFORT_TERMS}. */
export type EffortTerm = (typeof EFFORT_TERMS)[number];

// Every term is in whole thousandths of a point.

/** Bending or overbending, by depth and hole. */
export function techniqueTerm({ soundings }: Choice, { cost, holeRanks }: Figures): number {
  const { technique, breath, depth, hole } = soundings[0];
  if (technique === 'natural') return 0;
  const deeper = cost.bendDepth * (depth - 1);
  if (technique === 'valved-bend') return cost.valvedBend + deeper;
  if (technique !== 'bend') {
    return cost[technique] + Math.round(cost.overbendHole * rankOf(holeRanks.overbend, hole));
  }
  const ranks = breath === 'draw' ? holeRanks.drawBend : holeRanks.blowBend;
  const byHole = Math.round(cost.bendHole * rankOf(ranks, hole));
  return cost.bend + deeper + byHole + (breath === 'blow' ? cost.blowBend : 0);
}

function rankOf(ranks: readonly number[], hole: number): number {
  return ranks[hole - 1] ?? itemAt(ranks, -1);
}

/** Sounding several holes, and blocking those between. */
export function chordTerm({ soundings, blocked }: Choice, { cost }: Figures): number {
  return cost.chordHole * (soundings.length - 1) + cost.split * blocked;
}

/** What a second of holding costs. */
export function holdRate({ isBent }: Choice, { cost }: Figures): number {
  return isBent ? cost.bendHold : 0;
}

/** Holding a bent pitch. */
export function holdTerm(choice: Choice, seconds: number, figures: Figures): number {
  return Math.round(holdRate(choice, figures) * seconds);
}

/** Holes the mouth moves: the mean of its two edges, so a wider mouth counts half a side. */
export function holesMoved(from: Choice, to: Choice): number {
  return (Math.abs(to.lowHole - from.lowHole) + Math.abs(to.highHole - from.highHole)) / 2;
}

const USUAL_REACH = 3;

/** Moving along the harp. */
export function reachTerm(from: Choice, to: Choice, { cost }: Figures): number {
  const holes = holesMoved(from, to);
  return Math.round(cost.reach * holes + cost.farReach * Math.max(0, holes - USUAL_REACH));
}

/** Breath changes. */
export function breathTerm(from: Choice, to: Choice, { cost }: Figures): number {
  return from.breath === to.breath ? 0 : cost.breathChange;
}

/** Getting into a bend and out of one; a line that begins on a bend hits it straight on. */
export function bendMoveTerm(from: Choice | null, to: Choice, { cost }: Figures): number {
  const inPlace = from !== null && isSamePlace(from, to);
  const into = inPlace ? cost.bendSlide : cost.bendAttack;
  const staysBent = inPlace && to.isBent;
  return (to.isBent ? into : 0) + (from?.isBent && !staysBent ? cost.bendRelease : 0);
}

function isSamePlace(from: Choice, to: Choice): boolean {
  return from.breath === to.breath && from.lowHole === to.lowHole && from.highHole === to.highHole;
}

/** Sounding the same again. */
export function repeatTerm(from: Choice, to: Choice, { cost }: Figures): number {
  if (from.soundings.length !== to.soundings.length) return 0;
  const isSame = from.soundings.every(({ hole, breath, pitch }, at) => {
    const other = to.soundings[at];
    return other?.hole === hole && other.breath === breath && other.pitch === pitch;
  });
  return isSame ? cost.repeat : 0;
}

const MICROSECONDS = 1e6;

/** Seconds that a move needs to be done at leisure. */
export function timeNeeded(from: Choice, to: Choice, figures: Figures): number {
  const turn = from.breath === to.breath ? 0 : figures.turnTime;
  const shape = to.isBent && !isSamePlace(from, to) ? figures.bendTime : 0;
  const seconds = figures.moveTime * logOfTwo(1 + holesMoved(from, to)) + turn + shape;
  return Math.round(seconds * MICROSECONDS) / MICROSECONDS;
}

/** Moving in less time than is needed. */
export function hurryTerm(needed: number, seconds: number, { cost }: Figures): number {
  return needed > seconds ? Math.round(cost.hurry * (needed / seconds - 1)) : 0;
}
