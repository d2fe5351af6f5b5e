import type { ChordAvailability } from '@reedplate/chord-tone';
import type { ChordDegree } from '@reedplate/pitch';
import { formatSounding } from '@reedplate/tab';

/** The degrees that stand in each column of tones: root, third, fifth, seventh. */
export const TONE_COLUMNS: readonly (readonly ChordDegree[])[] = [
  ['1'],
  ['3', 'b3'],
  ['5', 'b5', '#5'],
  ['7', 'b7', 'bb7'],
];

/** The ways to sound the tone that belongs in a column; blank where the chord has none there. */
export function sayTones(found: ChordAvailability, degrees: readonly ChordDegree[]): string {
  const tone = found.chord.tones.find(({ degree }) => degrees.includes(degree));
  return tone === undefined ? '' : tabOfTone(found, tone.degree);
}

/** Tones that have no column: sixths and ninths, the fourth of a suspended chord. */
export function otherTones({ chord }: ChordAvailability): readonly ChordDegree[] {
  const inColumns = TONE_COLUMNS.map((degrees) =>
    chord.tones.find(({ degree }) => degrees.includes(degree)),
  );
  return chord.tones.filter((tone) => !inColumns.includes(tone)).map(({ degree }) => degree);
}

/** A tone without a column, and the ways to sound it. */
export function sayOther(found: ChordAvailability, degree: ChordDegree): string {
  return `${degree}: ${tabOfTone(found, degree)}`;
}

function tabOfTone({ targets }: ChordAvailability, wanted: ChordDegree): string {
  const own = targets.filter(({ degree }) => degree === wanted);
  return own.map(({ sounding }) => formatSounding(sounding)).join(' ') || '(none)';
}
