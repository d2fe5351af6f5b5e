import type { Measure } from './measure.js';

/** Most times that a repeat is played, whatever the file asks for. */
const MOST_PASSES = 16;

/**
 * The measures in the order they are played, as indexes: repeats and their endings played out.
 * A repeat that is not opened goes back to the latest double bar or end of a repeat, or to the beginning
 * (ABC 2.1, 4.8).
 */
export function playOrder(measures: readonly Measure[]): readonly number[] {
  const order: number[] = [];
  const passes = makePassCounter(measures);
  let sectionStart = 0;
  let pass = 1;
  let at = 0;
  while (at < measures.length) {
    const measure = measures[at] as Measure;
    if (at !== sectionStart && beginsSection(measures, at, sectionStart)) {
      sectionStart = at;
      pass = 1;
    }
    if (measure.endings !== undefined && !measure.endings.includes(pass)) {
      at = afterEnding(measures, at);
      continue;
    }
    order.push(at);
    if (measure.closes > 0 && pass < passes(sectionStart, measure)) {
      pass += 1;
      at = sectionStart;
      continue;
    }
    at += 1;
    // Another ending belongs to the same repeat; anything else after its close is new.
    if (measure.closes > 0 && measures[at]?.endings === undefined) {
      sectionStart = at;
      pass = 1;
    }
  }
  return order;
}

/** Whether a section begins at a measure. A double bar within a repeat that was opened only divides it. */
function beginsSection(measures: readonly Measure[], at: number, sectionStart: number): boolean {
  const { endings, opens, isAfterDoubleBar = false } = measures[at] as Measure;
  if (opens) return true;
  if (endings !== undefined) return false;
  const isOpened = measures[sectionStart]?.opens === true;
  return measures[at - 1]?.endings !== undefined || (isAfterDoubleBar && !isOpened);
}

/** The first measure after the ending that `at` stands in. */
function afterEnding(measures: readonly Measure[], at: number): number {
  const endings = measures[at]?.endings;
  let next = at + 1;
  while (next < measures.length && measures[next]?.endings === endings) next += 1;
  return next;
}

/** Counts how often a section is played: as its close says, or as often as its endings are numbered. */
function makePassCounter(
  measures: readonly Measure[],
): (sectionStart: number, closing: Measure) => number {
  // Each section is looked through once, however many closes it has.
  let counted = { sectionStart: -1, highest: 0 };
  return (sectionStart, { closes }) => {
    if (counted.sectionStart !== sectionStart) {
      counted = { sectionStart, highest: highestEnding(measures, sectionStart) };
    }
    return Math.min(Math.max(closes, counted.highest), MOST_PASSES);
  };
}

/** The highest number of the endings of the section that begins at a measure; 0 without. */
function highestEnding(measures: readonly Measure[], sectionStart: number): number {
  let highest = 0;
  for (let at = sectionStart; at < measures.length; at += 1) {
    const { endings, closes } = measures[at] as Measure;
    if (at > sectionStart && beginsSection(measures, at, sectionStart)) break;
    for (const number of endings ?? []) highest = Math.max(highest, number);
    if (closes > 0 && endings === undefined) break;
  }
  return highest;
}
