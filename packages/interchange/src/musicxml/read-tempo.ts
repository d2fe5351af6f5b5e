import { child, childrenOf, childText, type XmlElement } from './xml-tree.js';

/** Quarter notes in each unit that a metronome mark counts: MusicXML 4.0, data type note-type-value. */
const QUARTERS_OF_UNIT: ReadonlyMap<string, number> = new Map([
  ['whole', 4],
  ['half', 2],
  ['quarter', 1],
  ['eighth', 0.5],
  ['16th', 0.25],
]);

/**
 * Quarter notes a minute that a `<sound>` or `<direction>` sets: a sound says how fast, or else the
 * metronome mark that is shown; `undefined` where neither does.
 */
export function quartersOf(element: XmlElement): number | undefined {
  const sounds = element.name === 'sound' ? [element] : childrenOf(element, 'sound');
  const tempos = sounds.map(({ attributes }) => Number(attributes.get('tempo') ?? 0));
  return tempos.find(isTempo) ?? metronomesOf(element).find(isTempo);
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
