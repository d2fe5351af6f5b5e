import { type Opening, openingWords } from '../notation/opening-words.js';
import { element } from './xml-text.js';

/** Note values that felt beats have, by their ticks. */
const BEAT_UNITS: ReadonlyMap<number, readonly [unit: string, dots: number]> = new Map([
  [3840, ['whole', 0]],
  [1920, ['half', 0]],
  [1440, ['quarter', 1]],
  [960, ['quarter', 0]],
  [720, ['eighth', 1]],
  [480, ['eighth', 0]],
  [240, ['16th', 0]],
]);

/** What stands over the first bar, as far as it is known. */
export interface WrittenOpening extends Opening {
  readonly beatTicks: number;
}

/** Words and metronome mark over the first bar; none where nothing is known. */
export function writeOpening({ feel, tempo, beatTicks }: WrittenOpening): readonly string[] {
  const said = openingWords({ feel, tempo });
  const types = [...(said === '' ? [] : [writeWords(said)]), ...writeMetronome(tempo, beatTicks)];
  return types.length === 0 ? [] : [element('direction', types, { placement: 'above' })];
}

function writeWords(text: string): string {
  return element('direction-type', [element('words', text)]);
}

/** A metronome mark, in felt beats. */
export function writeMetronome(tempo: number | undefined, beatTicks: number): readonly string[] {
  const beat = BEAT_UNITS.get(beatTicks);
  if (tempo === undefined || beat === undefined) return [];
  const [unit, dots] = beat;
  const mark = element('metronome', [
    element('beat-unit', unit),
    ...Array.from({ length: dots }, () => element('beat-unit-dot')),
    element('per-minute', `${tempo}`),
  ]);
  return [element('direction-type', [mark])];
}
