import type { WarningList } from '../warning.js';
import { child, childrenOf, childText, type XmlElement } from './xml-tree.js';

/** Quarter notes in each unit that a metronome mark counts: MusicXML 4.0, data type note-type-value. */
const QUARTERS_OF_UNIT: ReadonlyMap<string, number> = new Map([
  ['whole', 4],
  ['half', 2],
  ['quarter', 1],
  ['eighth', 0.5],
  ['16th', 0.25],
]);

/** A tempo and the bar it stands in. */
interface TempoMark {
  readonly quarters: number;
  readonly bar: number;
}

/**
 * Quarter notes a minute of the first tempo of the parts' measures; later ones that differ are warned
 * of. A `<sound>` says how fast, or else the metronome mark that is shown.
 */
export function readTempo(
  parts: readonly (readonly XmlElement[])[],
  warnings: WarningList,
): number | undefined {
  const marks = parts
    .flatMap((measures) => measures.flatMap((measure, at) => marksOf(measure, at + 1)))
    .sort((a, b) => a.bar - b.bar);
  const [first] = marks;
  let last = first?.quarters;
  for (const { quarters, bar } of marks) {
    // All parts may carry the same mark.
    if (quarters !== last) warnings.add('tempo-change', { bar }, `${quarters}`);
    last = quarters;
  }
  return first?.quarters;
}

function marksOf(measure: XmlElement, bar: number): readonly TempoMark[] {
  return measure.children.flatMap((element) => {
    const sounds = element.name === 'sound' ? [element] : childrenOf(element, 'sound');
    const tempos = sounds.map(({ attributes }) => Number(attributes.get('tempo') ?? 0));
    const sounding = tempos.filter(isTempo);
    const quarters = sounding.length > 0 ? sounding : metronomesOf(element).filter(isTempo);
    return quarters.map((each) => ({ quarters: each, bar }));
  });
}

function isTempo(quarters: number): boolean {
  return quarters > 0 && Number.isFinite(quarters);
}

function metronomesOf(direction: XmlElement): readonly number[] {
  return childrenOf(direction, 'direction-type')
    .flatMap((type) => childrenOf(type, 'metronome'))
    .map((metronome) => {
      const unit = QUARTERS_OF_UNIT.get(childText(metronome, 'beat-unit')) ?? 0;
      const dotted = child(metronome, 'beat-unit-dot') === undefined ? 1 : 1.5;
      // Some write "c. 96".
      const perMinute = Number(/\d+(?:\.\d+)?/u.exec(childText(metronome, 'per-minute'))?.[0] ?? 0);
      return unit * dotted * perMinute;
    });
}
