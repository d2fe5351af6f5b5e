import type { Measure } from '../notation/measure.js';
import { child, childrenOf, type XmlElement } from './xml-tree.js';

/** An ending of a repeat. */
export interface Ending {
  /** The passes it is played in. */
  readonly numbers: readonly number[];
}

/** What the bar lines of a measure say. */
export interface Barlines extends Pick<Measure, 'opens' | 'closes'> {
  /** The ending this measure is in, and the one that goes on after it. */
  readonly ending: { readonly here: Ending | undefined; readonly next: Ending | undefined };
}

const MOST_TIMES = 16;

/** Reads repeats and endings; `before` is the ending that goes on from the measure before. */
export function readBarlines(measure: XmlElement, before: Ending | undefined): Barlines {
  const barlines = childrenOf(measure, 'barline');
  const repeats = barlines.flatMap((barline) => child(barline, 'repeat') ?? []);
  const endings = barlines.flatMap((barline) => child(barline, 'ending') ?? []);
  const forward = repeats.find(({ attributes }) => attributes.get('direction') === 'forward');
  const backward = repeats.find(({ attributes }) => attributes.get('direction') === 'backward');
  const start = endings.find(({ attributes }) => attributes.get('type') === 'start');
  const here = start === undefined ? before : readEnding(start);
  const isOver = endings.some(({ attributes }) => attributes.get('type') !== 'start');
  const times = Number(backward?.attributes.get('times') ?? 2);
  return {
    opens: forward !== undefined,
    closes: backward === undefined ? 0 : Math.min(MOST_TIMES, Math.max(1, Math.round(times) || 2)),
    ending: { here, next: isOver ? undefined : here },
  };
}

function readEnding({ attributes }: XmlElement): Ending | undefined {
  const numbers = (attributes.get('number') ?? '')
    .split(/[,\s]+/u)
    .map(Number)
    .filter((number) => Number.isInteger(number) && number >= 1 && number <= MOST_TIMES);
  return numbers.length === 0 ? undefined : { numbers };
}
