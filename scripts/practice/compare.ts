import type { Heard, Material } from './material.js';
import {
  degreesOf,
  distance,
  intervalsOf,
  lengthsOf,
  melodyOf,
  notesInPatterns,
  phraseLengths,
  repeatedPatterns,
  restShare,
  type Shares,
  sharesOf,
} from './yardsticks.js';

/** What is counted of a line, by its name. */
const COUNTED: Readonly<Record<string, (heard: Heard) => readonly string[]>> = {
  intervals: ({ line }) => intervalsOf(melodyOf(line)),
  degrees: ({ line, tonic }) => degreesOf(melodyOf(line), tonic),
  'note lengths': ({ line }) => lengthsOf(line),
  'phrase lengths': ({ line }) => phraseLengths(line),
};

const round = (value: number): string => value.toFixed(2);
const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** A table of materials: how far each lies from the first, and what it is like by itself. */
export function compareMaterials(materials: readonly Material[]): readonly string[] {
  const names = Object.keys(COUNTED);
  const sharesByMaterial = materials.map(({ lines }) =>
    Object.values(COUNTED).map((count): Shares => sharesOf(lines.flatMap(count))),
  );
  const rows = materials.map((material, at) => {
    const far = names.map((_, index) => round(distance(sharesAt(at, index), sharesAt(0, index))));
    return `| ${[material.name, ...far, ...ownFigures(material)].join(' | ')} |`;
  });
  function sharesAt(at: number, index: number): Shares {
    return sharesByMaterial[at]?.[index] ?? new Map();
  }
  const head = ['lines', ...names, 'rests', 'small steps', 'patterns again', 'notes in patterns'];
  return [`| ${head.join(' | ')} |`, `|---${'|---:'.repeat(head.length - 1)}|`, ...rows];
}

/** Rest share, steps of two semitones and less, patterns that come again in a line, and in the set. */
function ownFigures({ lines }: Material): readonly string[] {
  const melodies = lines.map(({ line }) => melodyOf(line));
  const steps = melodies.flatMap(intervalsOf).map(Number);
  const small = steps.filter((step) => Math.abs(step) <= 2).length / steps.length;
  return [
    round(mean(lines.map(({ line }) => restShare(line)))),
    round(small),
    round(mean(melodies.map(repeatedPatterns))),
    round(notesInPatterns(melodies)),
  ];
}
