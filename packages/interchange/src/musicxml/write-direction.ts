import type { Feel } from '@reedplate/form';
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

const FEEL_WORDS: Readonly<Record<Feel, string>> = Object.freeze({
  straight: 'even eighths',
  shuffle: 'shuffle',
  'slow-12/8': 'slow 12/8',
});

/** What stands over the first bar, as far as it is known. */
export interface Opening {
  readonly feel?: Feel | undefined;
  /** Felt beats a minute. */
  readonly tempo?: number | undefined;
  readonly beatTicks: number;
  readonly remark?: string | undefined;
}

/** Words and metronome mark over the first bar; none where nothing is known. */
export function writeOpening({ feel, tempo, beatTicks, remark }: Opening): readonly string[] {
  const words = [...tempoWords(tempo), ...(feel === undefined ? [] : [FEEL_WORDS[feel]])];
  const said = words.join(', ');
  const types = [
    ...(said === '' ? [] : [writeWords(said.charAt(0).toUpperCase() + said.slice(1))]),
    ...writeMetronome(tempo, beatTicks),
  ];
  return [
    ...(types.length === 0 ? [] : [element('direction', types, { placement: 'above' })]),
    ...(remark === undefined
      ? []
      : [element('direction', [writeWords(remark)], { placement: 'above' })]),
  ];
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

/** How a band says a tempo. The bounds are a design choice, no source. */
function tempoWords(tempo: number | undefined): readonly string[] {
  if (tempo === undefined) return [];
  if (tempo < 76) return ['slow'];
  return [tempo < 132 ? 'medium' : 'fast'];
}
