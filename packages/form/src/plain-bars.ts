import { itemAt } from '@reedplate/pitch';
import type { FormBar, FormChord } from './types.js';

/**
 * Reads bars of the catalogue: the marks of `parseForm` without repeats, numerals in canonical text
 * and shares in lowest terms. It judges nothing, so that importing the package does not parse
 * hundreds of numerals; the tests hold every row against `parseForm`.
 *
 * @param known bars read before, by their marks: of some 800 bars of the catalogue few are different
 */
export function readPlainBars(
  text: string,
  known: Map<string, FormBar> = new Map(),
): readonly FormBar[] {
  const bars: FormBar[] = [];
  for (const written of text.split('|')) {
    const marks = written.trim();
    if (marks === '') continue;
    const bar = marks === '%' ? itemAt(bars, -1) : (known.get(marks) ?? readPlainBar(marks));
    known.set(marks, bar);
    bars.push(bar);
  }
  return Object.freeze(bars);
}

function readPlainBar(marks: string): FormBar {
  const chords: FormChord[] = [];
  for (const mark of marks.split(' ')) {
    const last = chords.at(-1);
    if (mark === '/' && last !== undefined) {
      chords[chords.length - 1] = Object.freeze({ ...last, weight: last.weight + 1 });
    } else {
      chords.push(Object.freeze({ numeral: mark === 'N.C.' ? null : mark, weight: 1 }));
    }
  }
  return Object.freeze(chords);
}
