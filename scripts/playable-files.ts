/**
 * Goes through every practice line there is in second position: keys by tunings by all forms, kinds and
 * levels; writes each as tab, ABC and MusicXML, and has every word of tab checked from its letters alone.
 * `docs/sheets.md` holds the result.
 *
 *     npx tsx --tsconfig tsconfig.json scripts/playable-files.ts            the standard tuning, in 12 keys
 *     npx tsx --tsconfig tsconfig.json scripts/playable-files.ts others G   all other tunings, in one key
 *     npx tsx --tsconfig tsconfig.json scripts/playable-files.ts dorian     one tuning, in 12 keys
 */
import { FORMS } from '@reedplate/form';
import { TECHNIQUE_LEVELS, TUNINGS, tuningById } from '@reedplate/layout';
import { TWELVE_KEYS } from '@reedplate/pitch';
import { PRACTICE_KINDS } from '@reedplate/practice';
import {
  complaintsOfPractice,
  type PracticeCase,
} from '../test/playable/complaints-of-practice.js';

/** What was found of some cases. */
interface Counts {
  lines: number;
  none: number;
  complaints: number;
}

const [asked = 'standard', ...tonics] = process.argv.slice(2);
const tunings =
  asked === 'others' ? TUNINGS.filter(({ id }) => id !== 'standard') : [tuningById(asked)];
const keys = TWELVE_KEYS.map(({ tonic }) => tonic).filter(
  (tonic) => tonics.length === 0 || tonics.includes(tonic),
);

/** Every form, kind and level of a tuning in a key. */
function casesOf({ tonic, tuning }: Pick<PracticeCase, 'tonic' | 'tuning'>) {
  return FORMS.flatMap((form) =>
    PRACTICE_KINDS.flatMap((kind) =>
      TECHNIQUE_LEVELS.map((level): PracticeCase => ({ form, kind, level, tonic, tuning })),
    ),
  );
}

function check(cases: readonly PracticeCase[], counts: Counts): void {
  for (const each of cases) {
    const found = complaintsOfPractice(each);
    if (found === 'none') counts.none += 1;
    else counts.lines += 1;
    for (const complaint of found === 'none' ? [] : found) {
      counts.complaints += 1;
      const { tonic, form, kind, level, tuning } = each;
      console.error(`${tonic} ${form.id} ${kind} ${level} ${tuning}: ${complaint}`);
    }
  }
}

const all: Counts = { lines: 0, none: 0, complaints: 0 };
for (const tonic of keys) {
  for (const { id } of tunings) {
    check(casesOf({ tonic, tuning: id as PracticeCase['tuning'] }), all);
    console.log(
      `to ${id} in ${tonic}: ${all.lines} lines, ${all.none} none, ${all.complaints} complaints`,
    );
  }
}
console.log(
  `${all.lines} practice lines, each in three formats; ${all.none} more that their harp does not ` +
    `have; ${all.complaints} words of tab that cannot be played or differ from the screen`,
);
process.exitCode = all.complaints === 0 ? 0 : 1;
