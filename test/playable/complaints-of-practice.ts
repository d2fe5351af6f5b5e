import { type Form, makeChart } from '@reedplate/form';
import { writePiece } from '@reedplate/interchange';
import { type Harp, makeHarp, type TechniqueLevel, type TuningId } from '@reedplate/layout';
import { isReedplateError, parseKey, type Tonic } from '@reedplate/pitch';
import { harpKeyOf } from '@reedplate/position';
import { type PracticeKind, practiceLine } from '@reedplate/practice';
import { formatTab, markOf } from '@reedplate/tab';
import { keyFor } from './key-for.js';
import { complaintOf } from './tab-complaint.js';
import { TAB_FORMATS, tabInFile } from './tab-in-files.js';

/** A practice line that is asked for. */
export interface PracticeCase {
  readonly tonic: Tonic;
  readonly form: Form;
  readonly kind: PracticeKind;
  readonly level: TechniqueLevel;
  readonly tuning: TuningId;
}

/** What is wrong with the files of a practice line; `none` where the harp has no such line. */
export type PracticeFinding = readonly string[] | 'none';

/** Every file holds what the screen shows, and every word of it can be played. */
export function complaintsOfPractice(asked: PracticeCase): PracticeFinding {
  const { tonic, form, kind, level } = asked;
  const chart = makeChart(form, keyFor(form, tonic));
  const harp = harpFor(asked);
  const found = lineOf(() => practiceLine(chart, harp, { kind, level }));
  if (found === 'none') return found;
  const { line, steps } = found;
  const soundings = steps.map((step) => step.soundings);
  const screen = soundings.map((grip) => formatTab([grip.map(markOf)]));
  return TAB_FORMATS.flatMap((format) => {
    const file = writePiece({ line, chart, key: chart.key }, format, { harp, soundings }) as string;
    const words = tabInFile(file, format);
    const isSame = words.join(' ') === screen.join(' ');
    return [
      ...(isSame ? [] : [`${format} has ${words.join(' ')}, the screen ${screen.join(' ')}`]),
      ...words.flatMap((word) => complaintOf(word, harp.holes.length) ?? []),
    ];
  });
}

/** The harp that plays the tonic in second position, by the label that its tuning is sold under. */
function harpFor({ tonic, tuning }: PracticeCase): Harp {
  const key = harpKeyOf(tonic, 2);
  const plain = makeHarp('C', { tuning: 'standard' });
  if (tuning === plain.tuning) return makeHarp(key, { tuning });
  try {
    return makeHarp(key, { tuning });
  } catch (error) {
    // Minor tunings are sold by a minor key.
    if (!isReedplateError(error)) throw error;
    return makeHarp(parseKey(`${MINOR.get(key.tonic) ?? key.tonic}m`), { tuning });
  }
}

const MINOR: ReadonlyMap<string, string> = new Map([
  ['Db', 'C#'],
  ['Gb', 'F#'],
  ['Ab', 'G#'],
]);

function lineOf<Found>(make: () => Found): Found | 'none' {
  try {
    return make();
  } catch (error) {
    if (isReedplateError(error) && error.code === 'SOUNDING_IMPOSSIBLE') return 'none';
    throw error;
  }
}
