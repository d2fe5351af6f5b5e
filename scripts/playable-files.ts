/**
 * Goes through every practice line there is, 12 keys by all forms, kinds and levels, on the standard tuning
 * in second position, and every kind and level on every other tuning in G; writes each as tab, ABC and
 * MusicXML, and has every word of tab checked from its letters alone. `docs/sheets.md` holds the result.
 */
import { FORMS } from '@reedplate/form';
import { TECHNIQUE_LEVELS, TUNINGS, type TuningId } from '@reedplate/layout';
import { TWELVE_KEYS } from '@reedplate/pitch';
import { PRACTICE_KINDS } from '@reedplate/practice';
import {
  complaintsOfPractice,
  type PracticeCase,
} from '../test/playable/complaints-of-practice.js';

const TONICS = TWELVE_KEYS.map(({ tonic }) => tonic);

/** The standard tuning in every key, every other one in G. */
const PLACES: readonly Pick<PracticeCase, 'tonic' | 'tuning'>[] = [
  ...TONICS.map((tonic) => ({ tonic, tuning: 'standard' as const })),
  ...TUNINGS.filter(({ id }) => id !== 'standard').map(({ id }) => ({
    tonic: 'G' as const,
    tuning: id as TuningId,
  })),
];

/** A word names one tuning, to go through that alone. */
const [only] = process.argv.slice(2);
const places = PLACES.filter(({ tuning }) => only === undefined || tuning === only);

const CASES: readonly PracticeCase[] = FORMS.flatMap((form) =>
  PRACTICE_KINDS.flatMap((kind) =>
    TECHNIQUE_LEVELS.flatMap((level) => places.map((place) => ({ form, kind, level, ...place }))),
  ),
);

const counts = { lines: 0, none: 0, complaints: 0 };
for (const asked of CASES) {
  const found = complaintsOfPractice(asked);
  if (found === 'none') counts.none += 1;
  else counts.lines += 1;
  for (const complaint of found === 'none' ? [] : found) {
    counts.complaints += 1;
    const { tonic, form, kind, level, tuning } = asked;
    console.error(`${tonic} ${form.id} ${kind} ${level} ${tuning}: ${complaint}`);
  }
}
console.log(
  `${counts.lines} practice lines, each in three formats; ${counts.none} more that their harp does not ` +
    `have; ${counts.complaints} words of tab that cannot be played or differ from the screen`,
);
process.exitCode = counts.complaints === 0 ? 0 : 1;
